/** Every string of the search in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const findEn = {
  open: 'Find',
  hint: 'Field, trap, farm, insect, page',
  title: 'Find a field, trap, farm, insect, person, page or note',
  label: 'What to find',
  kinds: {
    page: 'Pages',
    field: 'Fields',
    farm: 'Farms',
    trap: 'Traps',
    insect: 'Insects',
    person: 'People',
    record: 'What was written',
  },
  fields: (n: number) => plural(n, 'field', 'fields'),
  takenDown: (date: string) => `taken down ${date}`,
  records: { checks: 'check', skips: 'stop left out', treatments: 'treatment', decisions: 'answer to a decision' },
  none: 'Nothing of that name that you may see.',
  start: 'Type a part of a name, in any order; accents and capitals do not matter.',
  found: (n: number) => plural(n, 'match', 'matches'),
  more: (n: number) => `and ${n} more: type on to narrow it down`,
  offline: 'No answer from the server: only pages are found now.',
};

export type FindWords = typeof findEn;
