/** Programs of any shape, small, for property tests. */
import {
  ANSWERS,
  CONDITIONS,
  DECISION_REASONS,
  DECISIONS,
  formatDay,
  naturalKey,
  PRICED,
  type Program,
  RATE_UNITS,
  RECORD_KINDS,
  type RecordKind,
  type RecordOf,
  SKIP_REASONS,
  TRAP_DESIGNS,
  WEATHER_SERVICES,
  WEATHER_SOURCE_KINDS,
  WEEKDAYS,
} from '@duskwatch/core';
import fc from 'fast-check';

const word = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 6 })
  .map((text) => text.replace(/[;|\p{C}]/gu, '').trim() || 'x');
const text = fc.string({ unit: 'grapheme', maxLength: 12 });
const isoDay = fc.integer({ min: 0, max: 40_000 }).map((n) => formatDay(n as Parameters<typeof formatDay>[0]));
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
// JSON writes -0 as 0; adding 0 makes them one.
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => x + 0);
const whole = (min: number, max: number) => fc.integer({ min, max });

const records: { [K in RecordKind]: fc.Arbitrary<RecordOf<K>> } = {
  fields: fc.record({
    fieldId: word,
    farm: word,
    name: word,
    crop: word,
    growthHabit: orNull(word),
    plantedOn: orNull(isoDay),
    harvestOn: orNull(isoDay),
    latitude: orNull(real(-90, 90)),
    longitude: orNull(real(-180, 180)),
    timeZone: orNull(word),
    weatherSource: orNull(word),
  }),
  stages: fc.record({ fieldId: word, observedOn: isoDay, stage: word }),
  traps: fc.record({
    trapId: word,
    station: word,
    insect: word,
    design: fc.constantFrom(...TRAP_DESIGNS),
    latitude: orNull(real(-90, 90)),
    longitude: orNull(real(-180, 180)),
    hungOn: isoDay,
    takenDownOn: orNull(isoDay),
    informs: fc.array(word, { maxLength: 3 }),
  }),
  lures: fc.record({ trapId: word, placedOn: isoDay, lifeDays: orNull(whole(1, 400)) }),
  checks: fc.record({
    trapId: word,
    checkedOn: isoDay,
    visit: whole(1, 99),
    targetCount: orNull(whole(0, 1_000_000)),
    otherCount: orNull(whole(0, 1_000_000)),
    condition: fc.constantFrom(...CONDITIONS),
    emptied: fc.boolean(),
    note: orNull(text),
  }),
  skips: fc.record({
    trapId: word,
    skippedOn: isoDay,
    reason: fc.constantFrom(...SKIP_REASONS),
    note: orNull(text),
  }),
  sources: fc.record({
    sourceId: word,
    name: orNull(text),
    kind: orNull(fc.constantFrom(...WEATHER_SOURCE_KINDS)),
    latitude: orNull(real(-90, 90)),
    longitude: orNull(real(-180, 180)),
    elevationM: orNull(real(-500, 9_000)),
    timeZone: orNull(word),
    fillFrom: orNull(word),
    service: orNull(fc.constantFrom(...WEATHER_SERVICES)),
    stationId: orNull(word),
    address: orNull(text),
    fetching: fc.boolean(),
    termsSeenOn: orNull(isoDay),
  }),
  weather: fc.record({
    sourceId: word,
    date: isoDay,
    tminC: orNull(real(-90, 60)),
    tmaxC: orNull(real(-90, 60)),
    precipitationMm: orNull(real(0, 2_000)),
  }),
  normals: fc.record({ sourceId: word, month: whole(1, 12), tminC: real(-90, 60), tmaxC: real(-90, 60) }),
  samples: fc.record({
    fieldId: word,
    insect: word,
    sampledOn: isoDay,
    kind: word,
    unitsExamined: whole(1, 100_000),
    unitsInfested: orNull(whole(0, 1_000_000)),
    totalCount: orNull(whole(0, 1_000_000)),
  }),
  // What nobody wrote down of a treatment is left out, not null.
  treatments: fc.record(
    {
      fieldId: word,
      insect: word,
      appliedOn: isoDay,
      product: text,
      protectsDays: orNull(whole(0, 365)),
      reentryHours: orNull(real(0, 2_000)),
      preharvestDays: orNull(whole(0, 365)),
      productUnknown: fc.boolean(),
      appliedAt: fc.constantFrom('00:00', '23:59'),
      rate: real(0, 100_000),
      rateUnit: fc.constantFrom(...RATE_UNITS),
      applicator: text,
    },
    { requiredKeys: ['fieldId', 'insect', 'appliedOn', 'product', 'protectsDays', 'reentryHours', 'preharvestDays'] },
  ),
  decisions: fc.record({
    fieldId: word,
    insect: word,
    decidedOn: isoDay,
    decision: fc.constantFrom(...DECISIONS),
    reason: fc.constantFrom(...DECISION_REASONS),
    note: orNull(text),
  }),
  rules: fc.record({
    ruleId: word,
    crop: word,
    insect: word,
    design: orNull(fc.constantFrom(...TRAP_DESIGNS)),
    stages: fc.array(word, { maxLength: 3 }),
    threshold: real(0, 1_000_000),
    per: fc.constantFrom('night', 'week'),
    intervalDays: orNull(whole(1, 60)),
    validFrom: orNull(isoDay),
    validTo: orNull(isoDay),
    source: orNull(text),
  }),
  seasons: fc.record({
    season: whole(1900, 2200),
    insects: fc.array(word, { maxLength: 3 }),
    crops: fc.array(word, { maxLength: 3 }),
    fields: fc.array(word, { maxLength: 3 }),
    checkWeekdays: fc.subarray([...WEEKDAYS]),
    leadDays: orNull(whole(0, 120)),
    trapBudget: orNull(whole(0, 1_000_000)),
    mostTraps: orNull(whole(1, 50)),
    riskMissed: orNull(real(0.001, 0.999)),
    riskFalse: orNull(real(0.001, 0.999)),
    reserveShare: orNull(real(0, 5)),
    orderLeadDays: orNull(whole(0, 365)),
    luresKeepDays: orNull(whole(1, 2_000)),
    currency: orNull(fc.constantFrom('USD', 'MXN')),
  }),
  plans: fc.record({
    season: whole(1900, 2200),
    insect: word,
    area: word,
    design: orNull(fc.constantFrom(...TRAP_DESIGNS)),
    traps: orNull(whole(1, 1_000)),
    hangOn: orNull(isoDay),
    takeDownOn: orNull(isoDay),
    lureLifeDays: orNull(whole(1, 400)),
    note: orNull(text),
  }),
  prices: fc.record({
    item: fc.constantFrom(...PRICED),
    of: word,
    price: real(0, 100_000_000),
    currency: fc.constantFrom('USD', 'MXN'),
    note: orNull(text),
  }),
  stock: fc.record({
    stockId: word,
    item: fc.constantFrom('lure', 'trap'),
    of: word,
    onHand: whole(0, 1_000_000),
    countedOn: isoDay,
    wornOut: orNull(whole(0, 1_000_000)),
    openedOn: orNull(isoDay),
    expiresOn: orNull(isoDay),
    storage: orNull(text),
  }),
  answers: fc.record({
    question: word,
    answer: fc.constantFrom(...ANSWERS),
    answeredOn: isoDay,
    note: orNull(text),
  }),
};

const bytes = new TextEncoder();

/** Natural keys in the order in which a store lists them. */
const byKey =
  <K extends RecordKind>(kind: K) =>
  (a: RecordOf<K>, b: RecordOf<K>): number =>
    Buffer.compare(bytes.encode(naturalKey[kind](a)), bytes.encode(naturalKey[kind](b)));

const table = <K extends RecordKind>(kind: K): fc.Arbitrary<RecordOf<K>[]> =>
  fc
    .uniqueArray(records[kind], { maxLength: 6, selector: (record) => naturalKey[kind](record) })
    .map((all) => all.sort(byKey(kind)));

/** Each table in the order of its keys. */
export const anyProgram: fc.Arbitrary<Program> = fc.record({
  settings: fc.record({ name: word, invented: fc.boolean(), pinnedOn: orNull(isoDay) }),
  ...Object.fromEntries(RECORD_KINDS.map((kind) => [kind, table(kind)])),
}) as unknown as fc.Arbitrary<Program>;
