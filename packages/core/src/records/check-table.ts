/** What can be wrong within one table whose cells each read well. */

import type { Fault } from '../base/fault.ts';
import type { Context } from './locate.ts';
import { naturalKey } from './natural-key.ts';
import { nearest, nearestFew } from './nearest.ts';
import { isOwnInsect } from './own-insect.ts';
import type { RecordKind, RecordOf } from './program.ts';
import { TRAP_DESIGNS, WEEKDAYS } from './schema.ts';
import { lackingToFetch } from './source-needs.ts';
import { tables } from './tables.ts';
import { MAX_VISITS, repeatedChecks } from './visits.ts';

/** Reports every problem of the records among themselves: order of days, impossible pairs, keys said twice. */
export function checkTable<K extends RecordKind>(kind: K, records: readonly RecordOf<K>[], context: Context): void {
  const look = perRecord[kind] as (record: RecordOf<K>, at: At) => void;
  let index = 0;
  const at: At = { ...context, problem: (...said) => problemAt(context, kind, index)(...said) };
  for (const record of records) {
    look(record, at);
    index += 1;
  }
  if (kind === 'checks') checkRepeats(records as readonly RecordOf<'checks'>[], context);
  else checkKeys(kind, records, context);
}

type Say = (column: string, got: string, expected: string, fix: string, fault: Fault) => void;
type At = Context & { readonly problem: Say };

/** Reports problems of one record. */
export function problemAt(context: Context, kind: RecordKind, index: number): Say {
  return (column, got, expected, fix, fault) =>
    context.report({ where: { ...context.locate(kind, index), column }, got, expected, fix, fault });
}

const perRecord: { readonly [K in RecordKind]: (record: RecordOf<K>, at: At) => void } = {
  fields(field, at) {
    inOrder(at, ['planted_on', field.plantedOn], ['harvest_on', field.harvestOn]);
    checkZone(at, field.timeZone);
  },
  stages: () => {},
  traps(trap, at) {
    knownInsect(at, trap.insect);
    inOrder(at, ['hung_on', trap.hungOn], ['taken_down_on', trap.takenDownOn]);
  },
  lures: () => {},
  checks(check, at) {
    if (check.visit > MAX_VISITS) {
      const got = `more than ${MAX_VISITS} visits to trap ${check.trapId} on ${check.checkedOn}`;
      at.problem('checked_on', got, `up to ${MAX_VISITS} visits to a trap on a day`, 'Check the dates.', {
        kind: 'too-many-visits',
        most: MAX_VISITS,
      });
    }
    const { unfitReason = null, condition } = check;
    if (unfitReason !== null && condition !== 'unfit')
      at.problem(
        'unfit_reason',
        `${unfitReason}, at a ${condition} visit`,
        'a reason only at an unfit visit',
        'Set condition to unfit, or leave unfit_reason empty.',
        { kind: 'reason-of-fit', condition },
      );
    if (check.targetCount !== null || condition === 'unfit') return;
    at.problem(
      'target_count',
      `nothing, at a ${condition} visit`,
      'a count: not counted is not zero',
      'Write the count (0 when the trap held none), or set condition to unfit if nothing could be counted.',
      { kind: 'uncounted' },
    );
  },
  skips: () => {},
  sources(source, at) {
    checkZone(at, source.timeZone);
    if (source.fillFrom === source.sourceId)
      at.problem('fill_from', source.sourceId, 'another source', 'Name another source, or leave it empty.', {
        kind: 'fills-itself',
      });
    const lacking = source.fetching ? lackingToFetch(source) : null;
    if (lacking !== null)
      at.problem(
        lacking,
        'nothing',
        `what ${source.service ?? 'a service'} has to be asked with`,
        'Fill it in, or set fetching to no.',
        {
          kind: 'source-lacks',
          column: lacking,
        },
      );
  },
  weather(day, at) {
    const { forecastMadeOn = null, date } = day;
    if (forecastMadeOn !== null && forecastMadeOn > date)
      at.problem(
        'forecast_made_on',
        `${forecastMadeOn}, for ${date}`,
        'a day on or before the one forecast',
        'Correct one of the two days; leave forecast_made_on empty for a measured day.',
        { kind: 'forecast-after' },
      );
    if (day.tminC === null || day.tmaxC === null || day.tminC <= day.tmaxC) return;
    at.problem(
      'tmin_c',
      `tmin ${shortC(day.tminC)} above tmax ${shortC(day.tmaxC)}`,
      "a night's low at or below the day's high",
      'Check whether the two were swapped; leave a wrong one empty.',
      { kind: 'low-above-high' },
    );
  },
  normals({ tminC, tmaxC }, at) {
    if (tminC <= tmaxC) return;
    at.problem(
      'tmin_c',
      `tmin ${shortC(tminC)} above tmax ${shortC(tmaxC)}`,
      'the mean of the lows at or below that of the highs',
      'Check whether the two were swapped.',
      { kind: 'low-above-high' },
    );
  },
  samples(sample, at) {
    knownInsect(at, sample.insect);
    const { unitsInfested: infested, unitsExamined: examined, byPlace } = sample;
    if (infested !== null && infested > examined)
      at.problem(
        'units_infested',
        `${infested} infested of ${examined} examined`,
        'no more units infested than examined',
        'Correct one of the two; insects counted go in total_count.',
        { kind: 'infested-above-examined', infested, examined },
      );
    else if (byPlace && !addsUp(byPlace, infested ?? 0, examined))
      at.problem(
        'by_place',
        byPlace.join(';'),
        `infested/examined of each place, in all ${infested ?? 0}/${examined}`,
        'Correct it, or leave it empty when it was not written down place by place.',
        { kind: 'places-do-not-add-up', infested: infested ?? 0, examined },
      );
  },
  treatments(treatment, at) {
    knownInsect(at, treatment.insect);
    const { product, productUnknown = null, rate = null, rateUnit = null } = treatment;
    if (productUnknown === true && product.trim() !== '')
      at.problem('product_unknown', `yes, with ${product}`, 'no product where none is known', 'Correct one of the two.', {
        kind: 'product-said',
      });
    if ((rate === null) === (rateUnit === null)) return;
    const got = rate === null ? `${rateUnit} without a rate` : `${rate} without a unit`;
    at.problem(
      rate === null ? 'rate' : 'rate_unit',
      got,
      'a rate and its unit, or neither',
      'Fill in both, or leave both empty.',
      {
        kind: 'rate-without-unit',
      },
    );
  },
  decisions(decision, at) {
    knownInsect(at, decision.insect);
    if (decision.reason !== 'other' || (decision.note ?? '').trim() !== '') return;
    at.problem('note', 'nothing', 'what the other reason was', 'Write it in the note, or choose one of the other reasons.', {
      kind: 'reason-unsaid',
    });
  },
  rules(rule, at) {
    knownInsect(at, rule.insect);
    inOrder(at, ['valid_from', rule.validFrom], ['valid_to', rule.validTo]);
    for (const stage of rule.stages) knownStage(at, 'stages', rule.crop, stage);
  },
  seasons(season, at) {
    for (const insect of season.insects) knownInsect(at, insect, 'insects');
    for (const weekday of season.checkWeekdays) oneOf(at, 'check_weekdays', weekday, WEEKDAYS);
  },
  plans(plan, at) {
    knownInsect(at, plan.insect);
    inOrder(at, ['hang_on', plan.hangOn], ['take_down_on', plan.takeDownOn]);
  },
  prices(price, at) {
    if (price.item === 'trap') oneOf(at, 'of', price.of, ['any', ...TRAP_DESIGNS]);
    if (price.item === 'lure' && price.of !== 'any') knownInsect(at, price.of, 'of');
  },
  stock(stock, at) {
    if (stock.item === 'trap') oneOf(at, 'of', stock.of, TRAP_DESIGNS);
    else knownInsect(at, stock.of, 'of');
    inOrder(at, ['opened_on', stock.openedOn], ['expires_on', stock.expiresOn]);
    if (stock.wornOut === null || stock.wornOut <= stock.onHand) return;
    const got = `${stock.wornOut} worn out of ${stock.onHand} on hand`;
    at.problem('worn_out', got, 'no more worn out than on hand', 'Correct one of the two.', {
      kind: 'worn-above-stock',
      wornOut: stock.wornOut,
      onHand: stock.onHand,
    });
  },
  answers: () => {},
};

/** Whether a sample's places are those of the whole of it. */
function addsUp(byPlace: readonly string[], infested: number, examined: number): boolean {
  const places = byPlace.map((place) => /^(\d+)\/(\d+)$/.exec(place)?.slice(1).map(Number) ?? [1, 0]);
  const total = (at: 0 | 1) => places.reduce((sum, place) => sum + place[at]!, 0);
  return places.every(([found, of]) => of! > 0 && found! <= of!) && total(0) === infested && total(1) === examined;
}

/** To a hundredth: figures that came in °F have no end in °C. */
const shortC = (value: number): string => `${Number(value.toFixed(2))} °C`;

function inOrder(at: At, [first, from]: [string, string | null], [second, to]: [string, string | null]): void {
  if (from === null || to === null || from <= to) return;
  const fix = `Correct ${first} or ${second}: they are in the wrong order.`;
  at.problem(second, to, `a day on or after ${first}, ${from}`, fix, { kind: 'wrong-order', first, from, second });
}

function oneOf(at: At, column: string, word: string, words: readonly string[]): void {
  if (words.includes(word)) return;
  const close = nearest(word, words);
  const fix = close === null ? `Use one of ${words.join(', ')}.` : `Did you mean ${close}?`;
  at.problem(column, word, `one of ${words.join(', ')}`, fix, {
    kind: 'unreadable',
    wanted: { type: 'word', minimum: null, maximum: null },
    hint: close === null ? { kind: 'one-of' } : { kind: 'write', texts: [close] },
  });
}

function knownInsect(at: At, insect: string, column = 'insect'): void {
  if (at.words === null || at.words.insects.includes(insect) || isOwnInsect(insect, at.words.insects)) return;
  const close = nearestFew(insect, at.words.insects);
  const fix =
    close.length > 0
      ? `Did you mean ${close.join(' or ')}?`
      : `Use one of ${at.words.insects.join(', ')}, or the scientific name of another, written like acleris-minuta.`;
  at.problem(column, insect, 'the slug of an insect in the catalogue, such as helicoverpa-zea, or of another', fix, {
    kind: 'unknown-insect',
    close,
  });
}

export function knownStage(at: Pick<At, 'words' | 'problem'>, column: string, crop: string, stage: string): void {
  const known = at.words?.stagesOf(crop) ?? null;
  if (at.words === null || known === null || at.words.stage(crop, stage) !== null) return;
  const close = nearest(stage, known);
  const fix = close === null ? `Use one of ${known.join(', ')}.` : `Did you mean ${close}?`;
  at.problem(column, stage, `a growth stage of ${crop}, in words or as a BBCH code`, fix, {
    kind: 'unknown-stage',
    crop,
    close: close === null ? known : [close],
  });
}

function checkKeys<K extends RecordKind>(kind: K, records: readonly RecordOf<K>[], context: Context): void {
  const firstAt = new Map<string, number>();
  const { primaryKey } = tables[kind];
  records.forEach((record, index) => {
    const key = naturalKey[kind](record);
    const first = firstAt.get(key);
    if (first === undefined) {
      firstAt.set(key, index);
      return;
    }
    const row = context.locate(kind, first).row;
    problemAt(context, kind, index)(
      primaryKey.join(', '),
      key.replaceAll('|', ', '),
      `each ${primaryKey.join(' + ')} once; ${row === undefined ? 'an earlier record' : `row ${row}`} has it already`,
      'Remove one of the two, or correct the one that is wrong.',
      { kind: 'key-twice' },
    );
  });
}

function checkRepeats(checks: readonly RecordOf<'checks'>[], context: Context): void {
  for (const { index, first } of repeatedChecks(checks)) {
    const { trapId, checkedOn } = checks[index]!;
    const row = context.locate('checks', first).row;
    problemAt(context, 'checks', index)(
      'trap_id, checked_on',
      `${trapId}, ${checkedOn}: repeats ${row === undefined ? 'an earlier check' : `row ${row}`} exactly`,
      'a second visit on a day to differ from the first in something',
      'Remove the repeated row; if there were two visits alike, say so in the note of the second.',
      { kind: 'repeated-check' },
    );
  }
}

const timeZones = new Map<string, boolean>();

function isTimeZone(name: string): boolean {
  let known = timeZones.get(name);
  if (known === undefined) {
    try {
      new Intl.DateTimeFormat('en', { timeZone: name });
      known = true;
    } catch {
      known = false;
    }
    timeZones.set(name, known);
  }
  return known;
}

function checkZone(at: At, zone: string | null): void {
  if (zone === null || isTimeZone(zone)) return;
  at.problem('time_zone', zone, 'an IANA time zone', 'Write it like America/Halifax, or leave it empty.', { kind: 'time-zone' });
}
