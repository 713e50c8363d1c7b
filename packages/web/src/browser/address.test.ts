import { expect, test } from 'vitest';
import { parseSearch, stringifySearch } from './address.ts';

test('an address is plain text, and comes back as it went', () => {
  const search = { on: '2025-07-12', farm: '7', verb: 'decide' };
  expect(stringifySearch(search)).toBe('?on=2025-07-12&farm=7&verb=decide');
  expect(parseSearch('?on=2025-07-12&farm=7&verb=decide')).toEqual(search);
});
