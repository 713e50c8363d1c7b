/** The flights of a program, farm by farm and insect by insect. */
import { adviseCell } from '../advice/decide.ts';
import { caughtOutlook } from '../advice/larvae-finding.ts';
import { heatOf, type Prepared, trapsThisSeason, weatherSourceOf } from '../advice/prepare.ts';
import type { Verb } from '../advice/types.ts';
import { addDays, type Day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { modelById } from '../catalogue/look-up.ts';
import type { LarvaeOutlook } from '../forecast/larvae-outlook.ts';
import type { FieldRecord, TrapRecord } from '../records/schema.ts';
import { type FittedFlights, flightsOfTraps } from '../review/field-flights.ts';
import type { FlightCache } from '../review/flight-regions.ts';
import { datesView } from './dates.ts';
import type { FarmFlights, FlightRidge, NextEvent } from './farm-flights-schema.ts';
import { flightNights } from './flight-nights.ts';
import { flightView } from './flights.ts';
import type { FlightView, StageDays } from './flights-schema.ts';

/** How far ahead a flight is drawn and its offspring are followed. */
const AHEAD_DAYS = 60;
/** Of its highest night; less is not drawn. */
const LEAST_DRAWN = 0.005;
/** Of the offspring of the moths caught, from which a stage counts as being in the field. Own choice. */
const LEAST_SHARE = 0.05;

interface FarmCell {
  readonly farm: string;
  readonly insect: string;
  /** With a trap this season, the one that most of them inform first. */
  readonly fields: readonly FieldRecord[];
  readonly traps: readonly TrapRecord[];
}

/** A row for each farm and insect with a trap this season, from row `from` on; fitting goes on only while rows are taken. */
export function* programFlights(
  prepared: Prepared,
  cache: FlightCache,
  from = 0,
): Generator<{ readonly row: FarmFlights; readonly next: number; readonly of: number }, void, undefined> {
  const cells = farmCells(prepared);
  for (let i = from; i < cells.length; i++) yield { row: farmFlights(prepared, cells[i]!, cache), next: i + 1, of: cells.length };
}

function farmCells(prepared: Prepared): FarmCell[] {
  const farms = groupBy([...prepared.fields.values()], ({ farm }) => farm);
  return [...farms].flatMap(([farm, all]) =>
    prepared.insects.flatMap((insect): FarmCell[] => {
      const informed = all
        .map((field) => ({ field, traps: trapsThisSeason(prepared, field, insect) }))
        .filter(({ traps }) => traps.length > 0)
        .sort((a, b) => b.traps.length - a.traps.length);
      if (informed.length === 0) return [];
      const traps = new Map(informed.flatMap((each) => each.traps.map((trap) => [trap.trapId, trap] as const)));
      return [{ farm, insect, fields: informed.map(({ field }) => field), traps: [...traps.values()] }];
    }),
  );
}

function farmFlights(prepared: Prepared, { farm, insect, fields, traps }: FarmCell, cache: FlightCache): FarmFlights {
  const [field] = fields;
  const { flights, noFlights } = flightsOfTraps(prepared, field!, insect, traps, cache);
  const list = flights?.read.flights.map(flightView) ?? [];
  const offspring = outlookOf(prepared, field!, traps);
  const [, second] = flights?.read.tried ?? [];
  return {
    farm,
    insect,
    design: flights?.design ?? null,
    traps: flights?.traps ?? traps.length,
    moths: flights?.moths ?? 0,
    noFlights,
    unsure: flights?.read.unsure ?? false,
    other: flights?.read.unsure && second ? second.flights : null,
    list,
    next: nextEvent(prepared.on, list, offspring),
    ridge: flights && list.length > 0 ? ridgeOf(prepared, field!, flights) : null,
    eggs: offspring && spanOf(offspring, ({ egg }) => egg),
    larvae: offspring && spanOf(offspring, (of) => of['small-larva'] + of.larva + of['large-larva']),
    fields: fieldsOf(prepared, fields, insect),
  };
}

const VERBS: readonly Verb[] = ['decide', 'scout', 'blind', 'covered', 'watch', 'none'];

function fieldsOf(prepared: Prepared, fields: readonly FieldRecord[], insect: string): FarmFlights['fields'] {
  return fields
    .map(({ fieldId, name }) => {
      const { verb, by, dueSince } = adviseCell(prepared, fieldId, insect);
      return { fieldId, name, verb, by, dueSince };
    })
    .sort((a, b) => VERBS.indexOf(a.verb) - VERBS.indexOf(b.verb) || a.name.localeCompare(b.name));
}

/** By the traps of the design that caught most: designs are never pooled. */
function outlookOf(prepared: Prepared, field: FieldRecord, traps: readonly TrapRecord[]): LarvaeOutlook | null {
  const caught = [...groupBy(traps, ({ design }) => design).values()]
    .flatMap((own) => caughtOutlook(prepared, field, own, null, AHEAD_DAYS) ?? [])
    .sort((a, b) => b.outlook.moths - a.outlook.moths)[0];
  return caught?.outlook ?? null;
}

/** What comes first on or after a day: a flight's start, peak or end, or the larvae of the moths caught. */
export function nextEvent(on: Day, list: readonly FlightView[], offspring: LarvaeOutlook | null): NextEvent | null {
  const today = formatDay(on);
  const events = list
    .filter(({ status }) => status !== 'over')
    .flatMap((flight): NextEvent[] =>
      (['start', 'peak', 'end'] as const).flatMap((what) => {
        const { dates } = flight[what];
        return dates === null ? [] : [{ what, flight: flight.number, dates }];
      }),
    );
  const going = offspring?.worthGoingDates ? datesView(offspring.worthGoingDates) : null;
  if (going) events.push({ what: 'larvae', flight: null, dates: going });
  return (
    events
      .filter(({ dates }) => dates.middle >= today)
      .sort((a, b) => (a.dates.middle < b.dates.middle ? -1 : a.dates.middle > b.dates.middle ? 1 : 0))[0] ?? null
  );
}

/** From the first day to the last on which a stage is a twentieth of the offspring; open where the days followed end before it. */
function spanOf({ days, moths }: LarvaeOutlook, amount: (of: LarvaeOutlook['now']['amounts']) => number): StageDays | null {
  const isThere = ({ amounts }: LarvaeOutlook['now']) => amount(amounts) >= LEAST_SHARE * moths;
  const [first, last] = [days.find(isThere), days.findLast(isThere)];
  if (!first || !last) return null;
  return { from: formatDay(first.on), to: last === days.at(-1) ? null : formatDay(last.on) };
}

const THREE = 3;
const figures = (value: number): number => Number(value.toPrecision(THREE));

/** As far as there is something to draw. */
function ridgeOf(prepared: Prepared, field: FieldRecord, fitted: FittedFlights): FlightRidge | null {
  const model = modelById(fitted.modelId)!;
  const track = heatOf(prepared, weatherSourceOf(prepared, field)!, model.heat);
  const nights = flightNights(fitted, track, AHEAD_DAYS);
  if (nights === null) return null;
  const highest = Math.max(...nights.perNight.flat());
  const isDrawn = (night: readonly number[]) => night.some((perNight) => perNight > LEAST_DRAWN * highest);
  const [first, last] = [nights.perNight.findIndex(isDrawn), nights.perNight.findLastIndex(isDrawn)];
  if (highest <= 0 || first < 0) return null;
  const drawn = nights.perNight.slice(first, last + 1);
  const from = addDays(nights.from, first);
  return {
    from: formatDay(from),
    known: Math.max(0, Math.min(drawn.length, fitted.read.knownThrough - from + 1)),
    perNight: fitted.read.flights.map((_, index) => drawn.map((night) => figures(night[index]!))),
    heat: nights.heat.slice(first, last + 1).map((sum) => Math.round(sum * 10) / 10),
    unit: model.heat.unit,
  };
}
