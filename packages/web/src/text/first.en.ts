/** Every string of a program's first steps, in English. */
export const firstEn = {
  title: 'Your first advice',
  lead: 'A field, a trap and a check are enough for a first advice; the rest makes it surer. This list stays until there is advice, and everything can be changed later.',
  done: 'done',
  next: 'next',
  of: (done: number, all: number) => `${done} of ${all}`,
  steps: {
    fields: {
      title: 'Fields',
      why: 'What advice speaks about: the farm, the name, the crop. One by one, or many from a sheet.',
      without: 'Without a field there is nothing to advise about.',
      act: 'Add a field',
    },
    places: {
      title: 'Where they are',
      why: 'A field with a place stands on the map, and it is seen whether its weather comes from near by.',
      without: 'Without places: no map, no round by distance, and weather from far away is taken unasked.',
      act: 'Open the map',
    },
    stages: {
      title: 'The stage of each crop',
      why: 'Most rules hold only at some stages: silk, first flower, head.',
      without: 'Without a stage: Blind wherever a rule asks for one.',
      act: 'Record the stage',
    },
    traps: {
      title: 'A trap for each field',
      why: 'For one insect, with the day it was hung and the fields it speaks for.',
      without: 'Without a trap there is no catch to compare with a rule.',
      act: 'Add a trap',
    },
    weather: {
      title: 'Weather',
      why: 'The low and the high of each day: fetched from an open service, read from a file, or written by hand.',
      without: 'Without weather: no dates for egg hatch, larvae or the next flight.',
      act: 'Set up weather',
    },
    lures: {
      title: 'Their lures',
      why: 'The day each was put in and how long it lasts: an old lure catches less, and the rate would look lower than it is.',
      without: 'Without lures: nobody is told when one is due, and low catches may be the lure’s.',
      act: 'Record the lure',
    },
    checks: {
      title: 'The first check of each trap',
      why: 'The count since the trap was hung. A trap that was empty is a 0, and says so.',
      without: 'Without a check: Blind, for a trap nobody looked into says nothing.',
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
