/** The names of the pages, as links to them. */
export const pagesEn = {
  label: 'Pages',
  week: 'This week',
  traps: 'Traps',
  flights: 'Flights',
  map: 'Map',
  scouting: 'Scouting',
  round: 'Round',
  season: 'Season',
  rounds: 'Plan rounds',
  conflicts: (n: number) => `Conflicts ${n}`,
  conflictsLabel: (n: number) => `Conflicts ${n}: to decide`,
  learn: 'Learn',
  questions: (n: number) => `Questions ${n}`,
  questionsLabel: (n: number) => `Questions ${n}: open, about the records`,
  people: 'People',
  settings: 'Settings',
};

export type PagesWords = typeof pagesEn;
