import { describe, expect, test } from 'vitest';
import { week } from '../../shared/advice/week.fixture.ts';
import { countVerbs, selectWeek } from './select.ts';

const names = (search: Parameters<typeof selectWeek>[1]) =>
  selectWeek(week, search).groups.map((group) => [group.title, ...group.fields.map((field) => field.name)]);
const folded = (search: Parameters<typeof selectWeek>[1]) =>
  selectWeek(week, search).groups.flatMap((group) => group.folded.map((field) => field.name));

describe('which fields the week shows', () => {
  test('the farm with the most pressing field first, and what needs nothing folded', () => {
    expect(names({})).toEqual([
      ['Brook', 'Acre'],
      ['Hollin, north', 'Strip 9'],
    ]);
    expect(folded({})).toEqual(['Strip 10']);
  });

  test('fields by name as people number them; nothing is folded where a verb or another order is asked for', () => {
    expect(names({ sort: 'name' })).toEqual([[null, 'Acre', 'Strip 9', 'Strip 10']]);
    expect(names({ verb: 'watch' })).toEqual([['Hollin, north', 'Strip 10']]);
    for (const search of [{ sort: 'name' }, { sort: 'crop' }, { verb: 'watch' }] as const) expect(folded(search)).toEqual([]);
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
