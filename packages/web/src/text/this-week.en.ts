/** The headline of This week, its due lists, its folded fields and the answers given on it, in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const thisWeekEn = {
  headline: {
    late: (n: number) => `${plural(n, 'decision is', 'decisions are')} late`,
    moreAfterLate: (n: number, by: string) => `${plural(n, 'more is', 'more are')} due by ${by}`,
    due: (n: number, by: string) => `${plural(n, 'decision is', 'decisions are')} due by ${by}`,
    noDecision: 'No decision is due where Duskwatch can see',
    scouting: (n: number) => `${plural(n, 'field', 'fields')} to scout`,
    blind: (n: number) => `${plural(n, 'place', 'places')} it cannot see into`,
    fields: (fields: number, farms: number) => `${plural(fields, 'field', 'fields')} on ${plural(farms, 'farm', 'farms')}`,
    quiet: (n: number) => (n === 1 ? 'the one that needs nothing is folded' : `the ${n} that need nothing are folded`),
  },
  unanswered: (days: number, since: string) => `${plural(days, 'day', 'days')} late, unanswered since ${since}`,
  dueSince: (days: number, since: string) => `${plural(days, 'day', 'days')} late, since ${since}`,
  by: (date: string) => `by ${date}`,
  byToday: 'by today',
  answer: 'Answer',
  answerTo: (field: string, insect: string) => `Answer: ${field}, ${insect}`,
  answers: {
    title: 'What was decided',
    treated: 'Treated',
    'not-treated': 'Decided not to treat, because …',
    sampled: 'Looked, and counted',
    'not-scouted': 'Decided not to look, because …',
  },
  answerNote:
    'An answer stays with the name and the day. The question comes back when its time is over and the catch still asks.',
  trapsAt: (traps: number, stations: number) => `${plural(traps, 'trap', 'traps')} at ${plural(stations, 'station', 'stations')}`,
  checkWhy: {
    'check-due': 'today',
    'check-overdue': (days: number) => `${plural(days, 'day', 'days')} late`,
    unfit: 'was unfit',
    'lure-due': 'ends now',
    'lure-overdue': (days: number) => `spent for ${plural(days, 'day', 'days')}`,
  },
  startRound: 'Go on the round',
  quietWatch: (check: string) => `Watch, next check ${check}`,
  quietWatchOnly: 'Watch',
  quietNone: 'out of season',
  fold: 'Fold what needs nothing',
  key: (level: string) =>
    `Line: moths per trap per night this season, with its ${level} interval. The dashed line is the rule of that field and trap design, always at the same height, so that above and below can be compared by eye: under it the height grows with the square root of the catch, over it each tenfold is one step. A gap is nights without a fit trap, never zeros. A thin dot: the insect does not live on this crop. A dash gives the reason why it does not count now.`,
};

export type ThisWeekWords = typeof thisWeekEn;
