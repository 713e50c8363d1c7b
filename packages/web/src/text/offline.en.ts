/** Every string of what a device keeps for where there is no signal, in English. */
export const offlineEn = {
  since: (when: string) => `No signal. This is as it was read here on ${when}.`,
  holds: 'This device holds',
  read: (when: string) => `read ${when}`,
  holdsNothing: 'Nothing is kept on this device yet: open Duskwatch once with signal, and its pages stay.',
  pages: {
    week: 'This week',
    ownFields: 'My fields',
    traps: 'Fields and traps',
    questions: 'Questions',
    round: 'The round',
    scout: 'Scouting',
    fields: (n: number) => `${n} ${n === 1 ? 'field page' : 'field pages'}`,
  },
};

export type OfflineWords = typeof offlineEn;
