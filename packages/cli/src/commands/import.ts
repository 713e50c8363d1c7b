import { userInfo } from 'node:os';
import { type DataOption, describeDatabase, withDatabase } from '../database.ts';
import { readImport } from '../import/read.ts';
import { done, faulty, type Outcome } from '../outcome.ts';
import { progressBar } from '../progress.ts';
import { note, print } from '../terminal.ts';

export interface ImportOptions extends DataOption {
  readonly json?: boolean;
}

/** All of it or, when anything is faulty, nothing. What the database holds already is added no second time. */
export function importPath(path: string, options: ImportOptions): Promise<Outcome> {
  return withDatabase(options, async (store) => {
    const reading = await progressBar('Reading');
    const read = await readImport(path, await store.loadProgram(), { onProgress: reading.update }).finally(reading.stop);
    if (!read.ok) return faulty(...read.problems);

    const writing = await progressBar('Writing');
    const imported = await store
      .importProgram(read.value, {
        author: author(),
        at: new Date().toISOString(),
        onProgress: ({ done, total }) => writing.update(done, total),
      })
      .finally(writing.stop);
    if (!imported.ok) return faulty(...imported.problems);

    const { added, changed, unchanged } = imported.value;
    if (options.json) print(JSON.stringify({ added, changed, unchanged }));
    else note(`${added} records added, ${changed} changed, ${unchanged} already there, in ${describeDatabase(options)}`);
    return done;
  });
}

function author(): string {
  try {
    return userInfo().username;
  } catch {
    return 'import';
  }
}
