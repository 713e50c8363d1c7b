/** Every string of histories and conflicts in English. */
const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const historyEn = {
  button: 'History',
  of: (what: string) => `History of ${what}`,
  now: 'As it is now',
  removedNow: 'This record was removed. Restoring an earlier version brings it back.',
  said: (n: number) => `Said so far, ${plural(n, 'version', 'versions')}`,
  by: (who: string, when: string) => `${who}, ${when}`,
  countedAt: (when: string) => `counted as ${when}: the clock it was written with was off`,
  first: 'Written first:',
  firstAlone: 'Written first, and as it is now.',
  removed: 'Removed',
  unchanged: 'Said again, with no difference',
  standing: {
    current: 'holds now',
    removed: 'last word: removed',
    rival: 'awaits a decision',
    past: 'earlier',
  },
  notSent: 'on this machine, not yet sent',
  change: { caption: 'What changed', property: 'What', before: 'Before', after: 'After' },
  restore: 'Restore this',
  restoreOf: (who: string, when: string) => `Restore this: what ${who} said, ${when}`,
  edit: 'Edit',
  remove: 'Remove',
  none: 'Nothing was ever said of this.',
  loading: 'Reading the history …',
  failed: 'The history could not be read.',
  again: 'Try again',

  conflicts: {
    title: 'Conflicts',
    nav: (n: number) => (n === 0 ? 'Conflicts' : `Conflicts ${n}`),
    navLabel: (n: number) => (n === 0 ? 'Conflicts: none' : `Conflicts: ${n} to decide`),
    lead: 'Two people said different things without knowing of one another. Both are kept. Until somebody decides, the later one holds.',
    none: 'No conflicts',
    noneText:
      'Nothing that people said is at odds. When two people edit one record without knowing of one another, both versions wait here for a decision.',
    loading: 'Reading the conflicts …',
    reason: {
      'same-record': 'Two edits of one record',
      'same-key': 'Two records of one thing',
    },
    holds: 'Holds now',
    other: 'Also said',
    keep: 'Keep this',
    keepOf: (who: string, when: string) => `Keep this: what ${who} said, ${when}`,
    removed: 'Says that the record is removed.',
    same: 'same in both',
    differs: 'differs',
    kept: (who: string) => `Kept what ${who} said. The other stays in the history.`,
    keepOther: 'Keep the other instead',
    failed: (why: string) => `Not decided: ${why}`,
    all: 'Whole history',
  },
  refused: {
    title: 'Refused by the server',
    lead: 'Written on this machine, and not taken. Write it again rightly, or give it up.',
    retry: 'Send again',
    discard: 'Give it up',
    discarded: 'Given up.',
  },
};

export type HistoryWords = typeof historyEn;
