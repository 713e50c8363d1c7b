import { day } from '@duskwatch/core';
import { describe, expect, test } from 'vitest';
import { countVerbs, lineScales, selectWeek } from './select.ts';
import { week } from './week.fixture.ts';

const names = (search: Parameters<typeof selectWeek>[1]) =>
  selectWeek(week, search).groups.map((group) => [group.title, ...group.fields.map((field) => field.name)]);

describe('which fields the week shows', () => {
  test('farms in order, and their fields by name as people number them', () => {
    expect(names({})).toEqual([
      ['Brook', 'Acre'],
      ['Hollin, north', 'Strip 9', 'Strip 10'],
    ]);
  });

  test('the most urgent first: the verb decides, then its date', () => {
    expect(names({ sort: 'urgency' })).toEqual([[null, 'Acre', 'Strip 9', 'Strip 10']]);
  });

  test('a verb counts only among the insects that are shown', () => {
    expect(names({ verb: 'scout' })).toEqual([['Brook', 'Acre']]);
    expect(names({ verb: 'scout', insect: 'helicoverpa-zea' })).toEqual([]);
  });

  test('one insect keeps its own cells', () => {
    const { columns } = selectWeek(week, { insect: 'ostrinia-nubilalis' });
    expect(columns.map((column) => column.index)).toEqual([1]);
  });

  test('verbs are counted under the other filters, whatever verb is chosen', () => {
    const counts = countVerbs(week, { farm: 'Hollin, north', verb: 'watch' });
    expect(Object.fromEntries(counts)).toEqual({ watch: 1, none: 1, decide: 1, blind: 1 });
  });
});

test('small lines share one season and, within an insect and design, one scale', () => {
  const line = week.fields[0]!.cells[0]!.line!;
  expect(lineScales(week)(0, line)).toEqual({
    from: day('2025-07-01'),
    to: day('2025-07-12'),
    top: 3.1,
    ground: 'M0,29.5H240M0.0,26v3',
  });
});
