/** What every adapter must keep to. Run it with a way to make an empty database. */
import { afterEach, describe } from 'vitest';
import { openStore } from '../open.ts';
import type { Store } from '../types.ts';
import type { Bench, Harness } from './bench.ts';
import { accountContract } from './contract-accounts.ts';
import { arrivalContract } from './contract-arrival.ts';
import { calendarContract } from './contract-calendars.ts';
import { conflictContract } from './contract-conflicts.ts';
import { fetchContract } from './contract-fetches.ts';
import { importContract } from './contract-import.ts';
import { migrationContract } from './contract-migrations.ts';
import { revisionContract } from './contract-revisions.ts';

export function storeContract(name: string, harness: Harness): void {
  describe(`the store on ${name}`, () => {
    const open: Store[] = [];
    afterEach(async () => {
      for (const store of open.splice(0)) await store.close();
    });
    const bench: Bench = {
      harness,
      async store(url, program = 'main') {
        const store = await openStore(url ?? (await harness.fresh()), { program });
        open.push(store);
        return store;
      },
    };
    revisionContract(bench);
    conflictContract(bench);
    importContract(bench);
    accountContract(bench);
    calendarContract(bench);
    fetchContract(bench);
    arrivalContract(bench);
    migrationContract(bench);
  });
}
