/** The flights of an insect at a field, and the dates of its events to come: what its traps and its weather say together. */
import { modelHeat } from '../advice/phenology.ts';
import { growingYearStart, heatOf, historyOf, type Prepared, trapsThisSeason, weatherSourceOf } from '../advice/prepare.ts';
import type { Day } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import { modelsFor } from '../catalogue/look-up.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import { type FlightAgreement, flightAgreement } from '../flight/agreement.ts';
import { type Generations, readGenerations } from '../flight/generations.ts';
import { heatSpans, type SpannedCatch } from '../flight/heat-spans.ts';
import { type DatedEvent, forecastModel } from '../forecast/event-forecast.ts';
import type { FieldRecord, TrapDesign, TrapRecord } from '../records/schema.ts';
import { type FlightCache, type RegionFlights, regionFlights } from './flight-regions.ts';
import { axisModel } from './year-against-year.ts';

export interface FieldFlights {
  readonly field: string;
  readonly insect: string;
  /** Flights of the region in traps of one design, the one that caught most at the field; null with the reason. */
  readonly flights: FittedFlights | null;
  readonly noFlights: 'no-trap' | 'no-model' | 'no-weather-source' | 'no-heat' | 'nothing-caught' | null;
  readonly models: readonly ModelDates[];
}

export interface FittedFlights {
  readonly design: TrapDesign;
  /** Traps that inform the field, and the moths they caught. */
  readonly traps: number;
  readonly moths: number;
  /** Every trap of the region that was fitted together with them, and the past seasons that told what to expect. */
  readonly together: readonly TrapRecord[];
  readonly pastSeasons: readonly number[];
  /** The model whose heat rule makes the axis, and the day the axis begins. */
  readonly modelId: string;
  readonly axisFrom: Day;
  readonly read: Generations;
  /** Whether flights come when the model dates them; empty where it starts elsewhere than the axis. */
  readonly agreement: readonly FlightAgreement[];
}

export interface ModelDates {
  readonly model: Pick<PhenologyModel, 'id' | 'name' | 'source' | 'standing'>;
  readonly state: 'started' | 'not-started' | 'weather-missing';
  readonly startsOn: Day | null;
  readonly events: readonly DatedEvent[];
}

/** `cache` keeps fits by what they rest on; pass one on to reuse it. */
export function fieldFlights(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  cache: FlightCache = new Map(),
): FieldFlights {
  const { flights, noFlights } = flightsOfTraps(prepared, field, insect, trapsThisSeason(prepared, field, insect), cache);
  const models = modelsFor(insect)
    .filter(({ start }) => start.kind !== 'stage')
    .map((model) => modelDates(prepared, field, model));
  return { field: field.fieldId, insect, flights, noFlights, models };
}

/** Flights of the field's region as some traps of one insect saw them: those of the field, or of a farm it belongs to. */
export function flightsOfTraps(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  traps: readonly TrapRecord[],
  cache: FlightCache,
): Pick<FieldFlights, 'flights' | 'noFlights'> {
  const fitted = fittedFlights(prepared, field, insect, traps, cache);
  return typeof fitted === 'string' ? { flights: null, noFlights: fitted } : { flights: fitted, noFlights: null };
}

function fittedFlights(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  traps: readonly TrapRecord[],
  cache: FlightCache,
): FittedFlights | NonNullable<FieldFlights['noFlights']> {
  if (traps.length === 0) return 'no-trap';
  const model = axisModel(insect);
  if (model === null) return 'no-model';
  const source = weatherSourceOf(prepared, field);
  if (source === null) return 'no-weather-source';
  const track = heatOf(prepared, source, model.heat);
  const axisFrom = growingYearStart(field, prepared.on);
  const designs = [...groupBy(traps, ({ design }) => design).values()].map((own) => ({
    own,
    caught: heatSpans(
      own.map((trap) => historyOf(prepared, trap)),
      track,
      axisFrom,
      prepared.on,
    ),
  }));
  const most = designs.reduce((best, one) => (mothsIn(one.caught) > mothsIn(best.caught) ? one : best));
  const { design } = most.own[0]!;
  if (most.caught.spans.length === 0) return most.caught.leftOut > 0 ? 'no-heat' : 'nothing-caught';
  const region = regionFlights(prepared, field, insect, design, model, cache);
  if (region.fit.fits.length === 0) return 'nothing-caught';
  const read = readGenerations(region.fit, track, axisFrom, { abundance: ownAbundance(region, most.own) });
  if (read === null) return 'no-heat';
  const startsWithAxis = model.start.kind === 'calendar' && model.start.month === 1 && model.start.date === 1;
  const agreement = startsWithAxis ? flightAgreement(read, model) : [];
  return {
    design,
    traps: most.own.length,
    moths: mothsIn(most.caught),
    modelId: model.id,
    axisFrom,
    read,
    together: region.traps,
    pastSeasons: region.pastSeasons,
    agreement,
  };
}

/** Of the mean trap of the field, against the mean trap of the region. */
function ownAbundance({ fit, traps }: RegionFlights, own: readonly TrapRecord[]): number {
  const ids = new Set(own.map(({ trapId }) => trapId));
  const each = traps.flatMap(({ trapId }, i) => (ids.has(trapId) ? [fit.abundance[i]!] : []));
  return each.length === 0 ? 1 : each.reduce((sum, one) => sum + one, 0) / each.length;
}

const mothsIn = ({ spans }: SpannedCatch): number => spans.reduce((sum, { count }) => sum + count, 0);

function modelDates(prepared: Prepared, field: FieldRecord, model: PhenologyModel): ModelDates {
  const { id, name, source, standing } = model;
  const shown = { id, name, source, standing };
  const heat = modelHeat(prepared, field, model);
  if (heat.kind === 'not-started') return { model: shown, state: 'not-started', startsOn: null, events: [] };
  if (heat.kind === 'missing') return { model: shown, state: 'weather-missing', startsOn: null, events: [] };
  const { track, start } = heat.heat;
  return { model: shown, state: 'started', startsOn: start, events: forecastModel(track, model, start) };
}
