/** Traps read together: flights belong to a region, and a trap that catches little borrows from its neighbours. */

import { growingYearStart, heatOf, historyOf, once, type Prepared, weatherSourceOf } from '../advice/prepare.ts';
import { addDays, type Day, dayOf, partsOf, yearOf } from '../base/day.ts';
import { distanceKm } from '../base/distance.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import { experienceOf } from '../flight/earlier-season.ts';
import { expectedFlights } from '../flight/expected-flights.ts';
import { fitRegion, type RegionFit } from '../flight/fit-region.ts';
import { type Foreknowledge, flightPrior } from '../flight/flight-prior.ts';
import { heatSpans, joined, type SpannedCatch } from '../flight/heat-spans.ts';
import type { FieldRecord, TrapDesign, TrapRecord } from '../records/schema.ts';

/** Fits by what they rest on: a region is fitted again only when its counts, its heat or its past changed. */
export type FlightCache = Map<string, RegionFit>;

export interface RegionFlights {
  readonly fit: RegionFit;
  /** Traps with a count on the heat axis, as the fit numbers them. */
  readonly traps: readonly TrapRecord[];
  /** First years of the past seasons behind what was expected, newest first. */
  readonly pastSeasons: readonly number[];
}

/** Fields no further than this from a region's first field share its flights. Own choice. */
export const REGION_KM = 50;
/** Older seasons say less of this year's traps. */
const PAST_SEASONS = 5;

/**
 * The fields of each region. Fields are taken in the order of their ids; one within 50 km of a region's first field, with
 * the same start of the growing year, joins it, another founds its own. Fields without a place go with a placed one of
 * the same weather source, or else together by weather source.
 */
function regions(prepared: Prepared): ReadonlyMap<string, readonly FieldRecord[]> {
  return once(prepared, 'no check', 'flight regions', () => {
    const fields = [...prepared.fields.values()].sort((a, b) => (a.fieldId < b.fieldId ? -1 : 1));
    const isPlaced = ({ latitude, longitude }: FieldRecord) => latitude !== null && longitude !== null;
    const found: FieldRecord[][] = [];
    for (const field of fields.filter(isPlaced)) {
      const start = growingYearStart(field, prepared.on);
      const near = found.find(
        ([first]) => distanceKm(first!, field)! <= REGION_KM && growingYearStart(first!, prepared.on) === start,
      );
      if (near) near.push(field);
      else found.push([field]);
    }
    for (const field of fields.filter((one) => !isPlaced(one))) {
      const source = weatherSourceOf(prepared, field);
      const start = growingYearStart(field, prepared.on);
      const same = found.find((region) =>
        region.some((one) => weatherSourceOf(prepared, one) === source && growingYearStart(one, prepared.on) === start),
      );
      if (same) same.push(field);
      else found.push([field]);
    }
    return new Map(found.flatMap((region) => region.map((field) => [field.fieldId, region] as const)));
  });
}

const known = new WeakMap<Prepared, Map<string, RegionFlights>>();

/** The flights of the region of a field, in traps of one design, on the axis of the model's heat rule. */
export function regionFlights(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  design: TrapDesign,
  model: PhenologyModel,
  cache: FlightCache,
): RegionFlights {
  const region = regions(prepared).get(field.fieldId)!;
  const key = `${region[0]!.fieldId}\n${insect}\n${design}`;
  const own = known.get(prepared) ?? new Map<string, RegionFlights>();
  known.set(prepared, own);
  const answer = own.get(key) ?? fitted(prepared, region, insect, design, model, cache);
  own.set(key, answer);
  return answer;
}

function fitted(
  prepared: Prepared,
  region: readonly FieldRecord[],
  insect: string,
  design: TrapDesign,
  model: PhenologyModel,
  cache: FlightCache,
): RegionFlights {
  const traps = trapsOf(prepared, region, insect, design);
  const { unit } = model.heat;
  const catchIn = (from: Day, to: Day) => {
    const each = traps.map(({ trap, source }) => ({
      trap,
      caught: heatSpans([historyOf(prepared, trap)], heatOf(prepared, source, model.heat), from, to),
    }));
    return {
      caught: joined(each.map(({ caught }) => caught)),
      traps: each.filter(({ caught }) => caught.traps > 0).map(({ trap }) => trap),
    };
  };
  const kept = (caught: SpannedCatch, foreknowledge: Partial<Foreknowledge> = {}) => {
    const key = contentKey(caught, JSON.stringify([unit, foreknowledge]));
    const fit = cache.get(key) ?? fitRegion(caught, { unit, ...foreknowledge });
    cache.set(key, fit);
    return fit;
  };

  const start = growingYearStart(region[0]!, prepared.on);
  const past = Array.from({ length: PAST_SEASONS }, (_, ago) => {
    const from = yearsBefore(start, ago + 1);
    const { caught } = catchIn(from, addDays(yearsBefore(start, ago), -1));
    return { year: yearOf(from), fit: caught.spans.some(({ count }) => count > 0) ? kept(caught) : null };
  }).flatMap(({ year, fit }) => (fit ? [{ year, fit }] : []));
  const { seasons, skews, stray } = experienceOf(
    past.map(({ fit }) => fit),
    unit,
  );
  const startsWithAxis = model.start.kind === 'calendar' && model.start.month === 1 && model.start.date === 1;
  const published = startsWithAxis ? model.events.filter(({ event }) => event === 'peak-flight').map(({ from }) => from) : [];
  const expected = expectedFlights(
    seasons.map(({ flights }) => flights),
    published,
    { unit, width: flightPrior(unit, 1, 1).logWidth },
  );
  const now = catchIn(start, prepared.on);
  return {
    fit: kept(now.caught, { expected, skews, stray }),
    traps: now.traps,
    pastSeasons: past.flatMap(({ year }, i) => (seasons[i]!.flights.length > 0 ? [year] : [])),
  };
}

/** Traps of a design that inform fields of the region, each with the weather source of the first such field that has one. */
function trapsOf(prepared: Prepared, region: readonly FieldRecord[], insect: string, design: TrapDesign) {
  const found = new Map<string, { readonly trap: TrapRecord; readonly source: string }>();
  for (const field of region) {
    const source = weatherSourceOf(prepared, field);
    if (source === null) continue;
    for (const trap of prepared.trapsByCell.get(`${field.fieldId}\n${insect}`) ?? [])
      if (trap.design === design && !found.has(trap.trapId)) found.set(trap.trapId, { trap, source });
  }
  return [...found.values()].sort((a, b) => (a.trap.trapId < b.trap.trapId ? -1 : 1));
}

function yearsBefore(on: Day, years: number): Day {
  const { year, month, date } = partsOf(on);
  return dayOf(year - years, month, date);
}

/** Everything a fit rests on, in two 32-bit hashes (FNV-1a, forwards and with another start) and its size. */
function contentKey({ spans, traps, leftOut }: SpannedCatch, options: string): string {
  const text = `${options};${spans.map(({ trap, begins, nights, from, to, count }) => `${trap} ${begins} ${nights} ${from} ${to} ${count}`).join(';')}`;
  let [a, b] = [0x811c9dc5, 0x9e3779b9];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ (code + (i & 0xff)), 0x01000193);
  }
  return `${traps} ${leftOut} ${text.length} ${a >>> 0} ${b >>> 0}`;
}
