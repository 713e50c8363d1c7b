/** The names of the places and pages, as links to them. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const pagesEn = {
  label: 'Pages',
  places: { week: 'This week', fields: 'Fields & traps', rounds: 'Rounds', flights: 'Flights', season: 'Season' },
  within: (place: string) => `Within ${place}`,
  pages: {
    week: 'This week',
    bulletin: 'Bulletin',
    sheet: 'On paper',
    list: 'List',
    map: 'Map',
    questions: 'Questions',
    conflicts: 'Conflicts',
    rounds: 'Rounds',
    counts: 'Enter counts',
    scouting: 'Scouting',
    round: 'Today’s round',
    flights: 'Flights',
    plan: 'Season plan',
    review: 'Review',
  },
  toAnswer: (n: number) => plural(n, 'question or conflict to answer', 'questions and conflicts to answer'),
  howToRead: 'How to read this page',
  program: 'Program',
  programPages: {
    people: 'People',
    rules: 'Rules & insects',
    weather: 'Weather',
    data: 'Import & export',
    settings: 'Settings',
    help: 'Help',
  },
};

export type PagesWords = typeof pagesEn;
