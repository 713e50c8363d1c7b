/** The store's promises, kept by plans that a driver runs. */
import { accountStoreOn } from './accounts/store.ts';
import { append } from './append.ts';
import { calendarStoreOn } from './calendars/store.ts';
import { conflicts } from './conflicts.ts';
import { fetchStoreOn } from './fetches/store.ts';
import { importProgram } from './import.ts';
import { importStoreOn } from './imports/store.ts';
import { prepare } from './prepare.ts';
import type { Context, Driver } from './procedure.ts';
import { changesSince, counts, current, epoch, history, loadProgram, revisions, verifyValues } from './reads.ts';
import { restore } from './restore.ts';
import type { Store } from './types.ts';

export function storeOn(driver: Driver, program: string): Store {
  const context: Context = { program, db: driver.db, list: driver.list };
  return {
    program,
    accounts: accountStoreOn(driver, context),
    calendars: calendarStoreOn(driver, context),
    imports: importStoreOn(driver, context),
    fetches: fetchStoreOn(driver, context),
    epoch: () => driver.read(epoch(context)),
    async append(revisions, arrival) {
      const prepared = prepare(program, revisions, arrival);
      return prepared.ok ? driver.write(program, append(context, prepared.value)) : prepared;
    },
    importProgram: (records, options) => driver.write(program, importProgram(context, records, options)),
    loadProgram: () => driver.read(loadProgram(context)),
    current: (kind) => driver.read(current(context, kind)),
    history: (of) => driver.read(history(context, of)),
    revisions: (ids) => driver.read(revisions(context, ids)),
    restore: (revisionId, by) => driver.write(program, restore(context, revisionId, by)),
    conflicts: () => driver.read(conflicts(context)),
    changesSince: (sequence, limit = 1_000) => driver.read(changesSince(context, sequence, limit)),
    counts: () => driver.read(counts(context)),
    backup: (file) => driver.backup(file),
    check: () => driver.quickCheck(),
    async verify() {
      const complaints = (await driver.integrity()).map((got) => ({
        where: { file: 'database' },
        got,
        expected: 'a sound database',
        fix: 'Restore the newest backup that verifies.',
      }));
      // What lies in a damaged database cannot be relied on to be readable.
      return complaints.length > 0 ? { checked: 0, problems: complaints } : driver.read(verifyValues(context));
    },
    close: () => driver.close(),
  };
}
