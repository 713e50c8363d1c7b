import { expect, test } from 'vitest';
import type { FetchState } from '../fetches/types.ts';
import type { Bench } from './bench.ts';

const state: FetchState = {
  sourceId: 'yard',
  triedAt: '2026-07-14T21:05:00.000Z',
  answeredAt: null,
  nextAt: '2026-07-14T21:20:00.000Z',
  mustWait: false,
  failures: 1,
  trouble: { kind: 'late', detail: 'weather.example' },
  days: 0,
  validators: { 'https://weather.example/': { etag: '"a"', lastModified: null } },
};

export function fetchContract(bench: Bench): void {
  test('how fetching went is kept for each source of each program, the newest in place of what was', async () => {
    const url = await bench.harness.fresh();
    const { fetches } = await bench.store(url);
    expect(await fetches.list()).toEqual([]);
    await fetches.keep(state);
    await fetches.keep({ ...state, sourceId: 'attic' });
    await fetches.keep({ ...state, failures: 2 });
    expect(await (await bench.store(url)).fetches.list()).toEqual([
      { ...state, sourceId: 'attic' },
      { ...state, failures: 2 },
    ]);
    expect(await (await bench.store(url, 'other')).fetches.list()).toEqual([]);
  });
}
