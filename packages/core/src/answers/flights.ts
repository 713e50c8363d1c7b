/** Flights, dates to come and larvae of one field. */
import { type ModelHeat, modelHeat } from '../advice/phenology.ts';
import { heatOf, type Prepared, trapsThisSeason, weatherSourceOf } from '../advice/prepare.ts';
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { modelById, modelsFor } from '../catalogue/look-up.ts';
import type { ModelEvent, PhenologyModel } from '../catalogue/types.ts';
import type { Flight, FlightMoment } from '../flight/generations.ts';
import { forecastEvent } from '../forecast/event-forecast.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { FieldRecord } from '../records/schema.ts';
import { type FittedFlights, fieldFlights } from '../review/field-flights.ts';
import type { FlightCache } from '../review/flight-regions.ts';
import { truncateSeries } from '../weather/series.ts';
import { datesView, momentDates } from './dates.ts';
import { flightNights } from './flight-nights.ts';
import type {
  FieldFlightsView,
  FlightMomentView,
  FlightView,
  ForecastEventView,
  ForecastView,
  InsectFlights,
  SeasonFlights,
} from './flights-schema.ts';
import { larvaeView } from './larvae.ts';

/** Days drawn after the last measured one, as on the field's time axis. */
const AHEAD_DAYS = 28;
/** How long ago earlier dates are shown for. */
const DAYS_BEFORE = [28, 14, 7] as const;

/** Null when the program has no such field. `cache` keeps fits by what they rest on. */
export function fieldFlightsView(prepared: Prepared, fieldId: string, cache: FlightCache): FieldFlightsView | null {
  const field = prepared.fields.get(fieldId);
  if (!field) return null;
  return {
    on: formatDay(prepared.on),
    fieldId,
    weatherSource: weatherSourceOf(prepared, field),
    insects: prepared.insects.map((insect) => insectFlights(prepared, field, insect, cache)),
  };
}

function insectFlights(prepared: Prepared, field: FieldRecord, insect: string, cache: FlightCache): InsectFlights {
  const { flights, noFlights } = fieldFlights(prepared, field, insect, cache);
  return {
    insect,
    flights: flights && seasonFlights(prepared, field, insect, flights),
    noFlights,
    forecasts: modelsFor(insect).flatMap((model) => forecastView(prepared, field, model) ?? []),
    larvae: larvaeView(prepared, field, insect),
  };
}

function seasonFlights(prepared: Prepared, field: FieldRecord, insect: string, fitted: FittedFlights): SeasonFlights {
  const { design, traps, moths, modelId, axisFrom, read, together, pastSeasons } = fitted;
  const { unit, heatSoFar, tried, unsure, level, scatter, expected, intervals, leftOut } = read;
  const model = modelById(modelId)!;
  const track = heatOf(prepared, weatherSourceOf(prepared, field)!, model.heat);
  const hung = trapsThisSeason(prepared, field, insect).map(({ hungOn }) => day(hungOn));
  return {
    design,
    traps,
    modelName: model.name,
    unit,
    axisFrom: formatDay(axisFrom),
    heatSoFar,
    knownThrough: formatDay(read.knownThrough),
    list: read.flights.map(flightView),
    tried,
    unsure,
    level,
    scatter,
    together: { trapIds: together.map(({ trapId }) => trapId), moths: read.moths },
    expected: expected.map(({ peak, seasons, published }) => ({ heat: peak.mean, spread: peak.sd, seasons, published })),
    pastSeasons,
    moths,
    intervals,
    leftOut,
    curve: curveOf(fitted, track, Math.max(axisFrom, Math.min(...hung)) as Day),
    agreement: fitted.agreement.map(({ flight, compared, published, tolerance, difference, verdict, why }) => {
      return { flight, compared, published, tolerance, difference, verdict, why };
    }),
  };
}

export function flightView({ number, moths, start, peak, end, flown, status }: Flight): FlightView {
  const moment = (one: FlightMoment): FlightMomentView => ({
    heat: one.heat,
    low: one.low,
    high: one.high,
    dates: momentDates(one),
  });
  return { number, moths, start: moment(start), peak: moment(peak), end: moment(end), flown, status };
}

function curveOf(fitted: FittedFlights, track: HeatTrack, from: Day): SeasonFlights['curve'] {
  const nights = flightNights(fitted, track, AHEAD_DAYS);
  if (nights === null) return [];
  return nights.perNight.flatMap((perNight, i) => {
    const on = addDays(nights.from, i);
    return on >= from ? [{ on: formatDay(on), perNight: [...perNight] }] : [];
  });
}

function forecastView(prepared: Prepared, field: FieldRecord, model: PhenologyModel): ForecastView | null {
  if (model.start.kind === 'stage') return null;
  const result = modelHeat(prepared, field, model);
  if (result.kind !== 'known') return null;
  const { heat } = result;
  const { forecastThrough } = heat.ahead;
  return {
    modelId: model.id,
    forecastThrough: forecastThrough === null ? null : formatDay(forecastThrough),
    events: model.events.flatMap((event) => eventToCome(prepared, field, heat, event) ?? []),
  };
}

/** Null for what has come, or has no date. */
function eventToCome(prepared: Prepared, field: FieldRecord, heat: ModelHeat, event: ModelEvent): ForecastEventView | null {
  if (heat.total >= event.from) return null;
  const { track, measuredThrough } = heat.ahead;
  const begins = datesView(forecastEvent(track, heat.start, event.from, { measuredThrough }));
  if (begins === null) return null;
  const before = DAYS_BEFORE.flatMap((days) => {
    const asOf = addDays(prepared.on, -days);
    if (heat.start > asOf) return [];
    const dates = datesView(forecastEvent(trackAsOf(prepared, field, heat.model, asOf), heat.start, event.from));
    return dates && dates.method !== 'reached' ? [{ asOf: formatDay(asOf), dates }] : [];
  });
  return { event: event.event, generation: event.generation, begins, before };
}

/** The heat as it was measured by the end of an earlier day; without anybody's forecast of then, which is not kept. */
function trackAsOf(prepared: Prepared, field: FieldRecord, model: PhenologyModel, asOf: Day): HeatTrack {
  const source = weatherSourceOf(prepared, field)!;
  const key = `as of\n${asOf}\n${source}\n${model.id}`;
  const known = prepared.heat.get(key);
  if (known) return known;
  const track = heatTrack(model.heat, truncateSeries(prepared.weather.get(source)!, addDays(asOf, -1)), {
    normals: prepared.normals.get(source) ?? null,
  });
  prepared.heat.set(key, track);
  return track;
}
