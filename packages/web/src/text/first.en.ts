/** Every string of a program's first steps, in English. */
export const firstEn = {
  title: 'Your first advice',
  lead: 'Five short records, and this page says what to do in a field and why. Each can be changed later.',
  done: 'done',
  next: 'next',
  steps: {
    fields: {
      title: 'A field',
      why: 'What advice speaks about: its farm, its name, its crop.',
      act: 'Add a field',
    },
    stages: {
      title: 'The stage of its crop',
      why: 'Most rules hold only at some stages: silk, first flower, head.',
      act: 'Record the stage',
    },
    traps: {
      title: 'A trap',
      why: 'For one insect, with the day it was hung and the fields it speaks for.',
      act: 'Add a trap',
    },
    lures: {
      title: 'Its lure',
      why: 'The day it was put in and how long it lasts: an old lure catches less, and the rate would look lower than it is.',
      act: 'Record the lure',
    },
    checks: {
      title: 'The first check',
      why: 'The count since the trap was hung. A trap that was empty is a 0, and says so.',
      act: 'Write the check',
    },
  },
  more: 'Or bring what you have',
  ways: {
    sheet: 'Your own sheets',
    sheetText:
      'Counts or weather as you keep them, in any layout: you see what was understood before anything is kept, and can take it back whole.',
    sheetAct: 'Import a sheet',
  },
  quiet: {
    title: 'No field is near its season on this day',
    text: 'The program has fields, but their crops came off more than 60 days ago or are planted more than 60 days ahead. Choose another day, or look at the traps.',
  },
};

export type FirstWords = typeof firstEn;
