import { expect, test } from 'vitest';
import { parseSearch, stringifySearch, weekSearch } from './search.ts';

test('an address is plain text, and comes back as it went', () => {
  const search = { on: '2025-07-12', farm: '7', verb: 'decide' };
  expect(stringifySearch(search)).toBe('?on=2025-07-12&farm=7&verb=decide');
  expect(parseSearch('?on=2025-07-12&farm=7&verb=decide')).toEqual(search);
});

test('what an address says wrongly is dropped, not shown', () => {
  const search = weekSearch({ on: '2025-02-29', verb: 'wait', sort: 'luck', farm: '' });
  expect(Object.values(search).filter((value) => value !== undefined)).toEqual([]);
});
