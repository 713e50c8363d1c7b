/** Every string of the questions about records in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const questionsEn = {
  title: 'Questions',
  sub: (open: number, compared: number, visits: number) =>
    `${open === 0 ? 'Nothing open' : plural(open, 'question', 'questions')} · ${compared} of this season’s ${visits} usable checks could be compared with other traps`,
  loading: 'Holding the season’s counts against one another …',
  lead: 'Odd is not wrong. Whoever stood at the trap knows; nothing is changed by itself.',
  none: {
    title: 'Nothing to ask',
    text: 'The season’s records look sound. Few traps of one kind leave little to compare with; then only gross errors show.',
  },
  kinds: {
    'unlikely-count': 'An unlikely count',
    'columns-swapped': 'Target and others exchanged?',
    'repeated-count': 'The same count again and again',
    'same-count-everywhere': 'One count everywhere',
    'entered-in-bulk': 'Entered in one go',
    'rounded-counts': 'Many round numbers',
    'silent-trap': 'A trap that is silent while others catch',
    'loud-trap': 'A trap that catches many times what others do',
    'swapped-traps': 'Two traps exchanged?',
  },
  evidence: 'Evidence',
  columns: {
    trap: 'Trap',
    day: 'Day',
    count: 'Counted',
    others: 'Others',
    expected: 'Expected',
    neighbours: 'Other traps of its kind, same nights',
    act: 'Correct',
  },
  neighbour: (trap: string, count: string, nights: number) => `${trap}: ${count} in ${plural(nights, 'night', 'nights')}`,
  noNeighbours: 'none to compare with',
  unknown: '–',
  right: 'It is right',
  correct: 'Correct it',
  correctLabel: (trap: string, day: string) => `Correct it: the check of ${trap}, ${day}`,
  later: 'Ask later',
  said: { right: 'Kept as answered.', later: 'Asked again in a week.' },
  takeBack: 'Ask again',
  takenBack: 'The question is open again.',
  settled: (n: number) => `${plural(n, 'question', 'questions')} answered or put off`,
  answered: {
    right: (who: string, day: string) => `${who} on ${day}: it is right`,
    later: (who: string, day: string) => `${who} on ${day}: later`,
    declined: (who: string, day: string) => `${who} on ${day}: declined`,
  },
  somebody: 'Somebody',
  open: (n: number) => plural(n, 'open question about the records', 'open questions about the records'),
};

export type QuestionsWords = typeof questionsEn;
