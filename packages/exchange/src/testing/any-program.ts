/** Arbitrary programs that are sound, with texts as awkward as people make them. */
import {
  ANSWERS,
  type CheckRecord,
  CONDITIONS,
  catalogue,
  DECISION_REASONS,
  DECISIONS,
  dayOf,
  formatDay,
  type Program,
  RATE_UNITS,
  SKIP_REASONS,
  TRAP_DESIGNS,
  type TrapRecord,
  UNFIT_REASONS,
  WEATHER_SERVICES,
  WEATHER_SOURCE_KINDS,
  WEEKDAYS,
} from '@duskwatch/core';
import fc from 'fast-check';

const START = dayOf(2024, 1, 1);
const dayNumber = (from = 0, to = 900) => fc.integer({ min: from, max: to });
const iso = (offset: number) => formatDay((START + offset) as typeof START);
const someDay = dayNumber().map(iso);
const orNull = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });

const awkward = fc.oneof(
  fc.constantFrom(
    'two words',
    'a, b',
    'say "dusk"',
    '"',
    'line\nend',
    'dos\r\nend',
    'bare\rreturn',
    "l'été",
    '夜蛾',
    '🦋',
    ' ; ',
    "'=1+1",
  ),
  fc.string({ unit: 'grapheme', maxLength: 12 }),
);
/** Empty text is written as an empty cell, which is no text. */
const text = fc
  .array(awkward, { minLength: 1, maxLength: 3 })
  .map((parts) => parts.join(' '))
  .filter((joined) => joined.trim() !== '' && !joined.includes('\0'));
const id = text
  .map((value) => [...value.replace(/[;|]/g, '-')].slice(0, 30).join('').trim())
  .filter((value) => value !== '' && value.length <= 80);

const latitude = fc.double({ min: -90, max: 90, noNaN: true }).map((value) => value + 0);
const longitude = fc.double({ min: -180, max: 180, noNaN: true }).map((value) => value + 0);
const count = fc.integer({ min: 0, max: 1_000_000 });
const insect = fc.constantFrom(...catalogue.insects.map(({ id: slug }) => slug));
const design = fc.constantFrom(...TRAP_DESIGNS);

/** Two days in order, either of which may be missing. */
const span = fc.tuple(dayNumber(), dayNumber()).map(([a, b]) => [iso(Math.min(a, b)), iso(Math.max(a, b))] as const);

const field = (fieldId: string) =>
  fc.record({
    fieldId: fc.constant(fieldId),
    farm: id,
    name: id,
    crop: fc.oneof(fc.constantFrom('sweet-corn', 'tomato'), id),
    growthHabit: orNull(id),
    plantedOn: fc.constant(null),
    harvestOn: orNull(someDay),
    latitude: orNull(latitude),
    longitude: orNull(longitude),
    timeZone: fc.constantFrom(null, 'America/Halifax', 'Europe/Madrid'),
    weatherSource: fc.constant(null),
  });

const trap = (trapId: string, fields: readonly string[]) =>
  fc
    .record({
      station: id,
      insect,
      design,
      latitude: orNull(latitude),
      longitude: orNull(longitude),
      hung: span,
      takenDown: fc.boolean(),
      informs: fc.subarray([...fields]),
    })
    .map(
      ({ hung, takenDown, ...rest }): TrapRecord => ({
        trapId,
        ...rest,
        hungOn: hung[0],
        takenDownOn: takenDown ? hung[1] : null,
      }),
    );

const visit = (trapRecord: TrapRecord) =>
  fc
    .record({
      targetCount: count,
      otherCount: orNull(count),
      condition: fc.constantFrom(...CONDITIONS),
      emptied: fc.boolean(),
      why: fc.option(fc.constantFrom(...UNFIT_REASONS), { nil: undefined }),
      note: orNull(text),
      photo: fc.option(fc.stringMatching(/^[0-9a-f]{64}$/), { nil: undefined }),
      counted: fc.boolean(),
      later: fc.boolean(),
    })
    .map(
      ({ counted, later, why, ...rest }): Omit<CheckRecord, 'visit'> => ({
        ...rest,
        ...(rest.condition === 'unfit' && { unfitReason: why }),
        trapId: trapRecord.trapId,
        checkedOn: later && trapRecord.takenDownOn !== null ? trapRecord.takenDownOn : trapRecord.hungOn,
        targetCount: rest.condition === 'unfit' && !counted ? null : rest.targetCount,
      }),
    );

const weatherDay = (date: string) =>
  fc
    .record({
      sourceId: fc.constant('station 1'),
      a: orNull(fc.double({ min: -90, max: 60, noNaN: true })),
      b: orNull(fc.double({ min: -90, max: 60, noNaN: true })),
      precipitationMm: orNull(fc.double({ min: 0, max: 2_000, noNaN: true })),
      wasForecast: fc.boolean(),
    })
    .map(({ a, b, wasForecast, ...rest }) => {
      const [low, high] = a !== null && b !== null && a > b ? [b, a] : [a, b];
      const forecast = wasForecast ? { forecastMadeOn: date } : {};
      return { ...rest, date, tminC: low === null ? null : low + 0, tmaxC: high === null ? null : high + 0, ...forecast };
    });

const uniqueIds = fc.uniqueArray(id, { minLength: 1, maxLength: 4 });
const uniqueDays = fc.uniqueArray(someDay, { maxLength: 5 });

/** Makes one record for each of a list of keys. */
const forEach = <K, T>(keys: readonly K[], make: (key: K) => fc.Arbitrary<T>): fc.Arbitrary<T[]> =>
  fc.tuple(...keys.map(make)) as unknown as fc.Arbitrary<T[]>;

export const anyProgram: fc.Arbitrary<Program> = fc
  .record({ fieldIds: uniqueIds, trapIds: uniqueIds, days: uniqueDays, ruleIds: uniqueIds })
  .chain(({ fieldIds, trapIds, days, ruleIds }) => {
    const ofField = fc.constantFrom(...fieldIds);
    const traps = forEach(trapIds, (trapId) => trap(trapId, fieldIds));
    return fc
      .record({
        settings: fc.record({ name: id, invented: fc.boolean(), pinnedOn: orNull(someDay) }),
        fields: forEach(fieldIds, field),
        trapsAndChecks: traps.chain((hung) =>
          fc
            .array(fc.constantFrom(...hung).chain(visit), { maxLength: 8 })
            .map((visits) => ({ traps: hung, checks: distinctVisits(visits) })),
        ),
        stages: forEach(days, (observedOn) =>
          fc.record({ fieldId: ofField, observedOn: fc.constant(observedOn), stage: fc.constant('harvest') }),
        ),
        lures: forEach(days, (placedOn) =>
          fc.record({
            trapId: fc.constantFrom(...trapIds),
            placedOn: fc.constant(placedOn),
            lifeDays: orNull(fc.integer({ min: 1, max: 400 })),
          }),
        ),
        skips: forEach(days, (skippedOn) =>
          fc.record({
            trapId: fc.constantFrom(...trapIds),
            skippedOn: fc.constant(skippedOn),
            reason: fc.constantFrom(...SKIP_REASONS),
            note: orNull(text),
          }),
        ),
        sources: forEach(['station', 'grid'], (sourceId) =>
          fc.record({
            sourceId: fc.constant(sourceId),
            name: orNull(text),
            kind: orNull(fc.constantFrom(...WEATHER_SOURCE_KINDS)),
            latitude: orNull(fc.double({ min: -90, max: 90, noNaN: true }).map((x) => x + 0)),
            longitude: orNull(fc.double({ min: -180, max: 180, noNaN: true }).map((x) => x + 0)),
            elevationM: orNull(fc.integer({ min: -500, max: 9_000 })),
            timeZone: orNull(fc.constant('America/Halifax')),
            fillFrom: fc.constant(sourceId === 'station' ? 'grid' : null),
            service: orNull(fc.constantFrom(...WEATHER_SERVICES)),
            stationId: orNull(id),
            address: orNull(text),
            fetching: fc.constant(false),
            termsSeenOn: orNull(someDay),
          }),
        ),
        weather: forEach(days, weatherDay),
        normals: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 12 }).chain((months) =>
          forEach(months, (month) =>
            fc.record({
              sourceId: fc.constant('station'),
              month: fc.constant(month),
              tminC: fc.double({ min: -90, max: 0, noNaN: true }).map((x) => x + 0),
              tmaxC: fc.double({ min: 0, max: 60, noNaN: true }),
            }),
          ),
        ),
        samples: forEach(days, (sampledOn) =>
          fc
            .record({
              fieldId: ofField,
              insect,
              sampledOn: fc.constant(sampledOn),
              kind: id,
              unitsExamined: fc.integer({ min: 50, max: 5_000 }),
              unitsInfested: orNull(fc.integer({ min: 0, max: 50 })),
              totalCount: orNull(count),
            })
            .chain((sample) => {
              const { unitsExamined, unitsInfested } = sample;
              const byPlace = [`${unitsInfested ?? 0}/${unitsExamined - 1}`, '0/1'];
              const may = unitsInfested === null || unitsInfested < unitsExamined;
              return fc.boolean().map((written) => (written && may ? { ...sample, byPlace } : sample));
            }),
        ),
        treatments: forEach(days, (appliedOn) =>
          fc
            .record({
              fieldId: ofField,
              insect,
              appliedOn: fc.constant(appliedOn),
              product: text,
              protectsDays: orNull(fc.integer({ min: 0, max: 365 })),
              reentryHours: orNull(fc.double({ min: 0, max: 2_000, noNaN: true })),
              preharvestDays: orNull(fc.integer({ min: 0, max: 365 })),
              unknown: fc.boolean(),
              told: orNull(
                fc.record({
                  appliedAt: fc.constantFrom('00:00', '06:30', '23:59'),
                  rate: fc.double({ min: 0.01, max: 100_000, noNaN: true }),
                  rateUnit: fc.constantFrom(...RATE_UNITS),
                  applicator: id,
                }),
              ),
            })
            .map(({ unknown, told, ...rest }) => ({
              ...rest,
              ...told,
              ...(unknown && { product: '', productUnknown: true }),
            })),
        ),
        decisions: forEach(days, (decidedOn) =>
          fc.record({
            fieldId: ofField,
            insect,
            decidedOn: fc.constant(decidedOn),
            decision: fc.constantFrom(...DECISIONS),
            reason: fc.constantFrom(...DECISION_REASONS.filter((reason) => reason !== 'other')),
            note: orNull(text),
          }),
        ),
        rules: forEach(ruleIds, (ruleId) =>
          fc
            .record({
              ruleId: fc.constant(ruleId),
              crop: fc.constant('sweet-corn'),
              insect,
              design: orNull(design),
              stages: fc.subarray(['tassel', 'silk', '63']),
              threshold: fc.double({ min: 0, max: 1_000_000, noNaN: true }),
              per: fc.constantFrom('night' as const, 'week' as const),
              intervalDays: orNull(fc.integer({ min: 1, max: 60 })),
              valid: span,
              source: orNull(text),
            })
            .map(({ valid, ...rest }) => ({ ...rest, validFrom: valid[0], validTo: valid[1] })),
        ),
        ...anyPlanning(fieldIds, ruleIds),
        answers: forEach(ruleIds, (question) =>
          fc.record({
            question: fc.constant(question),
            answer: fc.constantFrom(...ANSWERS),
            answeredOn: someDay,
            note: orNull(text),
          }),
        ),
      })
      .map(({ trapsAndChecks, ...rest }) => ({ ...rest, ...trapsAndChecks }));
  });

/** Seasons, decisions for them, prices and stock; `ids` tell prices and packages apart. */
function anyPlanning(fieldIds: readonly string[], ids: readonly string[]) {
  const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const currency = fc.constantFrom('USD', 'MXN');
  const seasons = fc.uniqueArray(fc.integer({ min: 1900, max: 2200 }), { maxLength: 3 });
  const season = (year: number) =>
    fc.record({
      season: fc.constant(year),
      insects: fc.uniqueArray(insect, { maxLength: 3 }),
      crops: fc.uniqueArray(id, { maxLength: 3 }),
      fields: fc.subarray([...fieldIds]),
      checkWeekdays: fc.subarray([...WEEKDAYS]),
      leadDays: orNull(fc.integer({ min: 0, max: 120 })),
      trapBudget: orNull(count),
      mostTraps: orNull(fc.integer({ min: 1, max: 50 })),
      riskMissed: orNull(share),
      riskFalse: orNull(share),
      reserveShare: orNull(share),
      orderLeadDays: orNull(fc.integer({ min: 0, max: 365 })),
      luresKeepDays: orNull(fc.integer({ min: 1, max: 2_000 })),
      currency: orNull(currency),
    });
  const decided = (year: number) =>
    fc
      .record({
        season: fc.constant(year),
        insect,
        area: fc.constantFrom('all', ...fieldIds),
        design: orNull(design),
        traps: orNull(fc.integer({ min: 1, max: 1_000 })),
        days: span,
        lureLifeDays: orNull(fc.integer({ min: 1, max: 400 })),
        note: orNull(text),
      })
      .map(({ days, ...rest }) => ({ ...rest, hangOn: days[0], takeDownOn: days[1] }));
  const price = (of: string) =>
    fc.record({
      item: fc.constantFrom('gloves' as const, 'post' as const, 'driving-km' as const, 'replaces' as const),
      of: fc.constant(of),
      price: fc.double({ min: 0, max: 100_000_000, noNaN: true }),
      currency,
      note: orNull(text),
    });
  const shelf = (stockId: string) =>
    fc
      .record({
        stockId: fc.constant(stockId),
        item: fc.constant('lure' as const),
        of: insect,
        onHand: count,
        countedOn: someDay,
        wornOut: fc.constant(null),
        days: span,
        storage: orNull(text),
      })
      .map(({ days, ...rest }) => ({ ...rest, openedOn: days[0], expiresOn: days[1] }));
  return {
    seasons: seasons.chain((years) => forEach(years, season)),
    plans: seasons.chain((years) => forEach(years, decided)),
    prices: forEach(ids, price),
    stock: forEach(ids, shelf),
  };
}

/** Numbers visits, leaving out those that would repeat another exactly. */
function distinctVisits(visits: readonly Omit<CheckRecord, 'visit'>[]): CheckRecord[] {
  const said = new Set<string>();
  const count = new Map<string, number>();
  return visits.flatMap((check) => {
    const whole = JSON.stringify(Object.entries(check).sort());
    if (said.has(whole)) return [];
    said.add(whole);
    const key = `${check.trapId}|${check.checkedOn}`;
    const visitNumber = (count.get(key) ?? 0) + 1;
    count.set(key, visitNumber);
    return [{ ...check, visit: visitNumber }];
  });
}
