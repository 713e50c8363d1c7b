/** Every string of the forms that write records, in English. */
import type { ANSWERS, PricedItem, RuleRecord, Weekday } from '@duskwatch/core';
import { labelsEn } from './record-labels.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const recordEn = {
  kinds: {
    fields: 'field',
    stages: 'stage',
    traps: 'trap',
    lures: 'lure',
    checks: 'check',
    skips: 'trap passed by',
    weather: 'weather day',
    samples: 'sample',
    treatments: 'treatment',
    decisions: 'decision not to act',
    rules: 'rule',
    seasons: 'season plan',
    plans: 'decision for the season',
    prices: 'price',
    stock: 'stock',
    answers: 'answer',
    settings: 'program settings',
  },
  items: {
    trap: 'trap',
    lure: 'lure',
    gloves: 'pair of gloves',
    post: 'post',
    'driving-hour': 'hour on the round',
    'driving-km': 'kilometre driven',
    replaces: 'what it replaces, for the season',
  } as Readonly<Record<PricedItem, string>>,
  weekdays: {
    mon: 'Monday',
    tue: 'Tuesday',
    wed: 'Wednesday',
    thu: 'Thursday',
    fri: 'Friday',
    sat: 'Saturday',
    sun: 'Sunday',
  } as Readonly<Record<Weekday, string>>,
  per: { night: 'night', week: 'week' } as Readonly<Record<RuleRecord['per'], string>>,
  may: { decide: 'decide by itself', 'send-scouting': 'send people to look' } as Readonly<
    Record<NonNullable<RuleRecord['may']>, string>
  >,
  answers: { right: 'it is as written', later: 'ask again later', declined: 'declined' } as Readonly<
    Record<(typeof ANSWERS)[number], string>
  >,
  everywhere: 'everywhere',
  any: 'any',
  labels: labelsEn,

  yes: 'yes',
  no: 'no',
  nothing: 'nothing',
  close: 'Close',
  cancel: 'Cancel',
  choose: 'Choose …',
  required: 'needed',
  got: (got: string) => `got ${got}`,
  expected: (expected: string) => `expected ${expected}`,
  emptyHere: 'nothing written',
  fillIn: 'Fill it in.',
  faults: (n: number) => `${plural(n, 'entry', 'entries')} to put right before this can be saved`,

  record: {
    title: 'Record',
    stage: 'Stage seen',
    sample: 'Sample',
    treatment: 'Treatment',
    decision: 'Decided not to',
    recorded: (n: number) => `${plural(n, 'record', 'records')} of this season`,
    editField: 'The field itself',
    fieldHistory: 'History of the field',
  },
  titles: {
    add: {
      fields: 'Add a field',
      stages: 'Record a stage',
      traps: 'Add a trap',
      lures: 'Record a lure change',
      checks: 'Record a check',
      samples: 'Record a sample',
      treatments: 'Record a treatment',
      decisions: 'Record a decision not to treat or not to look',
      prices: 'Enter a price',
      stock: 'Enter stock',
    },
    edit: {
      fields: 'Edit the field',
      stages: 'Edit the stage',
      traps: 'Edit the trap',
      lures: 'Edit the lure',
      checks: 'Edit the check',
      skips: 'Edit why it was passed by',
      samples: 'Edit the sample',
      treatments: 'Edit the treatment',
      decisions: 'Edit the decision',
      seasons: 'What the season’s plan rests on',
      plans: 'Decide for the season',
      prices: 'Edit the price',
      stock: 'Edit the stock',
    },
  },
  save: 'Save',
  replaces: 'There is such a record already: saving replaces it, and it stays in the history.',
  placeHere: 'Take the place of this device',
  placing: 'Finding this device …',
  noPlace: 'This device does not say where it is.',

  sampling: {
    title: 'What to look at',
    none: 'The catalogue names no sample for this insect in this crop. Count what you can, and write how many you looked at.',
    look: (units: number, unitsHigh: number | null, unit: string, places: number | null, perPlace: number | null) =>
      `Examine ${units}${unitsHigh ? `–${unitsHigh}` : ''} ${unit}${places && perPlace ? `: ${perPlace} in each of ${places} places` : ''}.`,
    sign: {
      infested: 'Count those with living larvae as infested.',
      eggs: 'Count those with eggs as infested.',
      damaged: 'Count those damaged as infested.',
      'egg-masses': 'Count egg masses in all; those with any are infested.',
    },
    reached: (share: string, unit: string) => `The rule is reached at ${share} of ${unit}.`,
    masses: (each: string, unit: string) => `The rule is reached at ${each} egg masses on average, over all ${unit}.`,
    units: { plants: 'plants', ears: 'ears', fruit: 'fruit' } as Readonly<Record<string, string>>,
    region: (region: string) => `Made for ${region}.`,
    source: 'Source',
  },

  cautions: 'Before you do this',
  label: 'These figures are those of the product label: read them there and write what it says.',

  toast: {
    label: 'What was done',
    saved: (what: string) => `Saved: ${what}.`,
    removed: (what: string) => `Removed: ${what}.`,
    restored: (what: string) => `Restored: ${what}.`,
    undone: 'Undone.',
    undo: 'Undo',
    dismiss: 'Dismiss',
    offline: 'Kept on this machine until it can be sent.',
    refused: (why: string) => `The server refused it: ${why}`,
    seeRefused: 'See what it said',
    notKept: 'The browser would not keep it; nothing was saved.',
  },
  unsent: (n: number) => `${n} not yet sent`,
  otherPerson: (n: number) => `${plural(n, 'record', 'records')} of somebody else ${n === 1 ? 'waits' : 'wait'} on this machine`,
};

export type RecordWords = typeof recordEn;
