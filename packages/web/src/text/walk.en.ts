/** Every string of scouting in English that the core does not say: read at arm's length, in sunlight. */
export const walkEn = {
  title: 'Scouting',
  opening: 'Opening …',
  skip: 'Skip to scouting',
  round: 'Round',
  fields: 'Fields',

  nothing: {
    title: 'Nothing to scout kept on this phone yet',
    text: 'Open this page once with signal. From then on it works without any.',
    none: 'No field has anything to scout for today.',
    noneHow: 'Fields appear here once a trap, a sample or a rule ties an insect to them and a crop is on the field.',
  },

  choose: {
    lead: 'Which field, which insect?',
    find: 'Find a field',
    noMatch: 'No field of that name.',
    open: (n: string) => `under way: ${n} seen`,
    last: (date: string, found: string) => `last sample ${date}: ${found}`,
    of: (infested: number, examined: number) => `${infested} of ${examined}`,
    read: (date: string) => `As read from the server on ${date}.`,
  },

  before: {
    plan: 'What to look at',
    rule: 'Which figure?',
    stage: 'Crop stage you see',
    stageWhy: (needed: string) => `The figure holds at: ${needed}. Without a stage seen lately the advice cannot use the sample.`,
    look: 'Look for',
    walk: 'Where to walk',
    howMany: (least: string, most: number) => `At least ${least}, at most ${most}. It ends as soon as the field is clear.`,
    countAll: (units: string) => `All ${units}: nothing ends it sooner.`,
    cautions: 'Before you go in',
    start: 'Start',
    source: (source: string) => `Source: ${source}`,
    goOn: 'The time on the label is over: go on',
    other: 'Choose another field',
  },

  walk: {
    clean: 'Clean',
    left: (n: number) => `${n} more here`,
    pad: 'How many on this one?',
    tally: (units: string, found: string) => `${units}: ${found}`,
    share: (share: string, low: string, high: string) => `${share}, between ${low} and ${high} (80 % interval)`,
    undo: 'Take back the last',
    save: 'Save the sample',
    stop: 'Stop here',
    stopText: 'Saved as it is, without an answer of the plan. The advice reads the share found.',
    discard: 'Throw it away',
    discardText: 'Nothing of it is kept.',
    back: 'Go on walking',
    failed: 'This phone could not keep it. Free some space, then tap again.',
  },

  saved: {
    text: (field: string, found: string) => `${field}: ${found} kept.`,
    undo: 'Undo',
    undone: 'Taken back: the walk is open again.',
    discarded: 'Thrown away.',
    result: 'Last result',
    advice: 'The advice for this field counts it as soon as it has been sent.',
  },
};

export type WalkWords = typeof walkEn;
