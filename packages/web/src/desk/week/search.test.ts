import { expect, test } from 'vitest';
import { weekSearch } from './search.ts';

test('what an address says wrongly is dropped, not shown', () => {
  const search = weekSearch({ on: '2025-02-29', verb: 'wait', sort: 'luck', farm: '' });
  expect(Object.values(search).filter((value) => value !== undefined)).toEqual([]);
});
