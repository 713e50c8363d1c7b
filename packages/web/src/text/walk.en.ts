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
    walkTo: (place: number) => `Walk to place ${place}`,
    walkHow: (units: string) =>
      `About 40 paces on, along the zigzag, away from the edge. There, ${units} in a row, as they come.`,
    lap: 'By other rows this time, between the first places.',
    arrived: (place: number) => `I am at place ${place}`,
    goOn: 'Go on: no answer yet',
    undo: 'Take back the last',
    save: 'Save the sample',
    stop: 'Stop here',
    stopText: 'Saved as it is, without an answer of the plan. The advice reads the share found.',
    discard: 'Throw it away',
    back: 'Go on walking',
    failed: 'This phone could not keep it. Free some space, then tap again.',
  },

  after: {
    record: 'What to record',
    recordSample: 'The sample, with the button at the foot.',
    recordStage: 'No crop stage was noted: look at it now, the figure hangs on it.',
    recordDecision: 'If it is decided not to treat, record why; a treatment once it is made.',
    tell: 'Whom to tell',
    tellAbove: (farm: string) =>
      `Whoever farms ${farm}, today, and the coordinator: the decision is theirs, with a licensed adviser.`,
    tellClose: (farm: string) => `Whoever farms ${farm} and the coordinator: it is too close for a figure alone.`,
    tellBelow: 'Nobody has to be told: the advice counts it once it is sent.',
    tellCount: (farm: string) => `Whoever farms ${farm} and the coordinator, if it is more than usual: no figure says.`,
  },

  decision: {
    button: { 'not-treated': 'Decided not to treat, because …', 'not-scouted': 'Decided not to go and look, because …' },
    because: 'Because',
    note: 'Note (needed where the reason is another one)',
    adviser: 'Only what the grower has decided, with a licensed adviser. The question comes back when its time is over.',
    save: 'Save the decision',
    cancel: 'Not now',
    kept: 'Decision kept.',
    lacks: {
      reason: 'Choose a reason.',
      note: 'Say what the other reason was.',
      failed: 'This phone could not keep it. Free some space, then tap again.',
    },
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
