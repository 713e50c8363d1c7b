/** The names of the pages, as links to them. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const pagesEn = {
  label: 'Pages',
  week: 'This week',
  traps: 'Traps',
  map: 'Map',
  round: 'Round',
  conflicts: (n: number) => `Conflicts ${n}`,
  conflictsLabel: (n: number) => plural(n, 'conflict to decide', 'conflicts to decide'),
  people: 'People',
  settings: 'Settings',
};

export type PagesWords = typeof pagesEn;
