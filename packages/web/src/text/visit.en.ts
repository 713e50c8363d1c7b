/** At the trap, in English: read at arm's length, with gloves on. */

export const visitEn = {
  countFor: (date: string) => `Count for ${date}`,
  here: (n: number, of: number) => `${n} of ${of} here`,
  nights: (insect: string, n: number) => (n === 0 ? `${insect}, today` : `${insect}, ${n} ${n === 1 ? 'night' : 'nights'}`),
  last: (count: string, on: string) => `last ${count} on ${on}`,
  lastUnfit: (on: string) => `unfit on ${on}`,
  leftIn: (count: string) => `${count} left in`,
  never: 'first count',
  which: 'Which moth?',

  lure: {
    due: 'Lure due',
    age: (days: number, life: number | null) => (life === null ? `${days} days` : `${days} of ${life} days`),
    changed: 'Changed',
    notToday: 'Not today',
    fresh: (life: number | null) => (life === null ? 'New lure, life not known' : `New lure, ${life} days`),
    gloves: 'Fresh gloves; take the old lure along.',
    needed: 'Lure: changed, or not today?',
  },

  unfit: {
    gap: (nights: string) => `${nights} carry no information. They are kept as a gap, never as zero.`,
    nights: (n: number) => (n === 1 ? 'The night since the last visit' : `The ${n} nights since the last visit`),
    today: 'The nights since the last visit',
    afresh: 'Put it right now if you can: counting starts afresh tonight.',
    count: 'Count what is in it',
  },

  odd: {
    question: (last: string, now: string) => `Last time ${last}. Really ${now}?`,
    most: (most: string) => `The most in this trap so far is ${most}.`,
    around: (list: string) => `Other traps for it lately: ${list}.`,
    odd: 'Odd is not wrong. A photo helps whoever reads it later.',
    oddLow: 'It may be over. Look at lure and opening too: a trap that has gone blind is found here, or weeks from now.',
    yes: (now: string) => `Yes, ${now}`,
    no: 'No, correct it',
    photo: 'Yes, and take a photo',
  },

  skipped: (reason: string) => `Skipped: ${reason}.`,
  unskip: 'Take the skip back',
  unskipped: (trap: string) => `${trap}: skip taken back`,
  marks: 'How to tell it',
  drawing: 'Right forewing, drawn from this description: the mark alone.',
  fromMemory: 'Described from memory, no source at hand.',
};

export type VisitWords = typeof visitEn;
