import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type DataOption, describeDatabase, withDatabase } from '../database.ts';
import { buildDemoProgram, demoTypingErrorCsv } from '../demo/index.ts';
import { isEmpty, loadDemo } from '../load-demo.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { note } from '../terminal.ts';
import { isTaken, takenFolder } from './export.ts';

export interface DemoOptions extends DataOption {
  readonly folder?: string;
  readonly typedSheet?: string;
}

export async function demo(options: DemoOptions): Promise<Outcome> {
  if (options.folder === undefined && options.typedSheet === undefined) return loadIntoDatabase(options);
  if (options.folder !== undefined) {
    const target = resolve(options.folder);
    if (isTaken(target)) return misused(takenFolder(target));
    const { writeProgramFolder } = await import('@duskwatch/exchange');
    await writeProgramFolder(buildDemoProgram(), target);
    note(`Wrote the invented demo program to ${target}`);
  }
  if (options.typedSheet !== undefined) {
    writeFileSync(options.typedSheet, demoTypingErrorCsv().text, { flag: 'wx' });
    note(`Wrote a sheet with typing errors to ${resolve(options.typedSheet)}`);
  }
  return done;
}

function loadIntoDatabase(options: DataOption): Promise<Outcome> {
  return withDatabase(options, async (store) => {
    if (!(await isEmpty(store)))
      return faulty(
        optionProblem(
          '--data',
          `${describeDatabase(options)}, which holds a program already`,
          'an empty database',
          'Name another folder with --data.',
        ),
      );
    const loaded = await loadDemo(store);
    if (!loaded.ok) return faulty(...loaded.problems);
    note(`Loaded the invented demo program (${loaded.value.added} records) into ${describeDatabase(options)}`);
    return done;
  });
}
