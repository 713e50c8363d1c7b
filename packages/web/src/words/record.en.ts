/** Every string of the forms that write records, in English. */
import type { RecordKind } from '@duskwatch/core';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/** A label for a property of a record, and what to know while filling it in. */
export interface Label {
  readonly label: string;
  readonly hint?: string;
}

const fieldId = { label: 'Field' };
const insect = { label: 'Insect' };
const latitude = { label: 'Latitude, °', hint: 'Degrees north; south is negative.' };
const longitude = { label: 'Longitude, °', hint: 'Degrees east; west is negative.' };

const labels = {
  fields: {
    fieldId: { label: 'Short name', hint: 'Stays the same for ever: tables refer to it.' },
    farm: { label: 'Farm' },
    name: { label: 'Field name' },
    crop: { label: 'Crop' },
    growthHabit: { label: 'Growth habit', hint: 'bush or vining, where a rule tells them apart.' },
    plantedOn: { label: 'Planted on' },
    harvestOn: { label: 'Harvest on', hint: 'Done or expected.' },
    latitude,
    longitude,
    timeZone: { label: 'Time zone', hint: 'Such as America/Halifax.' },
    weatherSource: { label: 'Weather source', hint: 'Needed only where the program has several.' },
  },
  stages: { fieldId, observedOn: { label: 'Seen on' }, stage: { label: 'Stage' } },
  traps: {
    trapId: { label: 'Trap name', hint: 'Stays the same for ever: checks refer to it.' },
    station: { label: 'Station', hint: 'The place; several traps may share one.' },
    insect,
    design: { label: 'Design' },
    latitude,
    longitude,
    hungOn: { label: 'Hung on' },
    takenDownOn: { label: 'Taken down on', hint: 'Empty while it hangs.' },
    informs: { label: 'Fields it informs', hint: 'Their advice rests on this trap.' },
  },
  lures: {
    trapId: { label: 'Trap' },
    placedOn: { label: 'Placed on' },
    lifeDays: { label: 'Lasts, days', hint: 'As its package says; empty when not known.' },
  },
  checks: {
    trapId: { label: 'Trap' },
    checkedOn: { label: 'Checked on' },
    visit: { label: 'Visit of the day' },
    targetCount: { label: 'Target moths', hint: 'Empty only at an unfit visit: not counted is not zero.' },
    otherCount: { label: 'Other moths', hint: 'Empty when nobody counted them.' },
    condition: { label: 'Condition' },
    emptied: { label: 'Emptied' },
    note: { label: 'Note' },
    photo: { label: 'Photo' },
  },
  weather: {
    sourceId: { label: 'Source' },
    date: { label: 'Day' },
    tminC: { label: 'Lowest, °C' },
    tmaxC: { label: 'Highest, °C' },
    precipitationMm: { label: 'Rain, mm' },
  },
  samples: {
    fieldId,
    insect,
    sampledOn: { label: 'Sampled on' },
    kind: { label: 'Looked at' },
    unitsExamined: { label: 'Examined', hint: 'How many of them.' },
    unitsInfested: { label: 'Infested', hint: 'Empty when not recorded.' },
    totalCount: { label: 'Insects in all', hint: 'Empty when not counted.' },
  },
  treatments: {
    fieldId,
    insect,
    appliedOn: { label: 'Applied on' },
    product: { label: 'Product', hint: 'As you name it.' },
    protectsDays: { label: 'Protects, days', hint: 'Empty when not known.' },
    reentryHours: { label: 'Re-entry, hours', hint: 'From the label you read.' },
    preharvestDays: { label: 'Pre-harvest, days', hint: 'From the label you read.' },
  },
  rules: {
    ruleId: { label: 'Rule' },
    crop: { label: 'Crop' },
    insect,
    design: { label: 'Design' },
    stages: { label: 'Stages' },
    threshold: { label: 'Threshold, moths per trap' },
    per: { label: 'Per' },
    intervalDays: { label: 'Interval, days' },
    validFrom: { label: 'Holds from' },
    validTo: { label: 'Holds to' },
    source: { label: 'Source' },
  },
} satisfies Record<RecordKind, Readonly<Record<string, Label>>>;

export const recordEn = {
  kinds: {
    fields: 'field',
    stages: 'stage',
    traps: 'trap',
    lures: 'lure',
    checks: 'check',
    weather: 'weather day',
    samples: 'sample',
    treatments: 'treatment',
    rules: 'rule',
    settings: 'program settings',
  },
  labels: labels as Readonly<Record<RecordKind, Readonly<Record<string, Label>>>>,

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
    },
    edit: {
      fields: 'Edit the field',
      stages: 'Edit the stage',
      traps: 'Edit the trap',
      lures: 'Edit the lure',
      checks: 'Edit the check',
      samples: 'Edit the sample',
      treatments: 'Edit the treatment',
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
    source: (source: string, standing: string) => `Source: ${source} (${standing}).`,
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
