import { userInfo } from 'node:os';
import type { Program } from '@duskwatch/core';
import { type DataOption, describeDatabase, withDatabase } from '../database.ts';
import { type ReadImportOptions, readImport } from '../import/read.ts';
import { proposeSheetMatch } from '../import/sheet.ts';
import { done, faulty, type Outcome } from '../outcome.ts';
import { progressBar } from '../progress.ts';
import { note, print } from '../terminal.ts';

export interface ImportOptions extends DataOption, Pick<ReadImportOptions, 'match' | 'sheet' | 'units'> {
  readonly propose?: boolean;
  readonly json?: boolean;
}

/** All of it or, when anything is faulty, nothing. What the database holds already is added no second time. */
export function importPath(path: string, options: ImportOptions): Promise<Outcome> {
  return withDatabase(options, async (store) => {
    const held = await store.loadProgram();
    if (options.propose) return propose(path, held, options);

    const reading = await progressBar('Reading');
    const read = await readImport(path, held, { ...options, onProgress: reading.update }).finally(reading.stop);
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

async function propose(path: string, held: Program, { sheet }: ImportOptions): Promise<Outcome> {
  const match = await proposeSheetMatch(path, held, sheet);
  if (!match.ok) return faulty(...match.problems);
  print(JSON.stringify(match.value, null, 2));
  for (const { about, ask } of match.value.questions) note(`${about}: ${ask}`);
  return done;
}

function author(): string {
  try {
    return userInfo().username;
  } catch {
    return 'import';
  }
}
