/** The sheet on which counts are entered at the desk, in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const countsEn = {
  title: 'Enter counts',
  loading: 'Reading the traps …',
  sub: (open: number, all: number, on: string) =>
    `Visits of ${on}: ${open} of ${plural(all, 'trap', 'traps')} not yet counted. Another day is chosen above.`,
  none: 'No trap hangs on this day.',
  how: 'Digits, then Tab or Enter for the next trap. A column copied from a spreadsheet can be pasted into any box, also with trap labels before it. An empty box is not counted; nothing caught is 0.',
  insect: 'Insect',
  allInsects: 'All insects',
  onlyDue: 'Only traps that are due',
  more: 'Other moths, condition and remark too',
  station: 'Station',
  trap: 'Trap',
  last: 'Last count',
  lastWas: (count: string, on: string) => `${count} on ${on}`,
  never: 'first visit',
  count: 'Moths',
  countOf: (trap: string, insect: string) => `Moths in ${trap}, ${insect}`,
  others: 'Other moths',
  othersOf: (trap: string) => `Other moths in ${trap}`,
  condition: 'Condition',
  conditionOf: (trap: string) => `Condition of ${trap}`,
  why: (trap: string) => `Why ${trap} was unfit`,
  chooseWhy: 'why?',
  remark: 'Remark',
  remarkOf: (trap: string) => `Remark on ${trap}`,
  counted: 'already counted',
  odd: {
    high: (last: string) => `Far above the last count, ${last}. Is it right?`,
    low: (last: string) => `Far below the last count, ${last}. Is it right?`,
  },
  needs: { count: 'A count, or unfit with its reason.', 'unfit-reason': 'Say why it was unfit.' },
  nothing: 'Nothing is filled in yet.',
  ready: (n: number) => `${plural(n, 'trap', 'traps')} filled in.`,
  save: (n: number) => (n === 0 ? 'Save' : `Save ${plural(n, 'count', 'counts')}`),
  saved: (n: number, on: string) => `Saved: ${plural(n, 'check', 'checks')} of ${on}.`,
  lacking: (n: number) => `${plural(n, 'line lacks', 'lines lack')} something; nothing was saved.`,
  lookAgain: (n: number) =>
    `${plural(n, 'count is', 'counts are')} far above what was expected. Look at ${n === 1 ? 'it' : 'them'}, then save once more.`,
  clear: 'Empty the sheet',
  emptied:
    'Moths in the traps counted here are taken to have been removed. Lure changes, photos and traps left full belong to the trap’s own page.',
  pasted: (n: number) => `${plural(n, 'line', 'lines')} pasted.`,
  notPasted: 'Nothing was pasted:',
  pasteFaults: {
    'no-count': (line: number, got: string) =>
      `line ${line}, “${got}”: a whole number of up to six digits is needed, or nothing.`,
    'no-trap': (line: number, got: string) =>
      `line ${line}, “${got}”: no trap of this sheet; look at its label, the day and the filters.`,
    twice: (line: number, got: string) => `line ${line}: ${got} stands in it a second time; leave one of the two.`,
    'too-long': (lines: number, room: number) => `${lines} lines, and the sheet has ${room} from this box on; begin further up.`,
  },
  moreFaults: (n: number) => `and ${n} more like these.`,
};

export type CountsWords = typeof countsEn;
