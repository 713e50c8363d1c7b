/** Whether the flights caught come when a published model says they should. */
import type { ModelEvent, PhenologyModel } from '../catalogue/types.ts';
import type { Flight, FlightMoment, Generations } from './generations.ts';

export interface FlightAgreement {
  readonly event: ModelEvent;
  /** The flight nearest to the published heat; null when none is near. */
  readonly flight: number | null;
  /** Which moment of the flight was compared: its peak, or for first moths its start (5 %). */
  readonly compared: 'start' | 'peak';
  /** Published heat on the axis of the flights, in the model's unit. */
  readonly published: number;
  /** How far the published figure itself is trusted, in degree-days to either side. */
  readonly tolerance: number;
  readonly found: Pick<FlightMoment, 'heat' | 'low' | 'high'> | null;
  /** found − published, in degree-days: above 0 the flight is late. */
  readonly difference: number | null;
  readonly verdict: 'agrees' | 'early' | 'late' | 'cannot tell';
  readonly why: 'no-flight-near' | 'number-of-flights-unsure' | 'moment-too-uncertain' | null;
}

/** A published heat is taken as good to a tenth of itself. Own choice, no source. */
export const AGREEMENT_TOLERANCE = 0.1;
/** A flight further from the published heat than this share of a generation belongs to another event. Own choice. */
const NEAR = 0.5;
/** Corn earworm, adult to adult: the shortest generation in the catalogue (USDA ARS-S-127 1976), in °F·d. */
const GENERATION_F = 872.8;

/**
 * Compares each flight that a model dates (`peak-flight`; else first moths or emergence) with the catch, on one heat
 * axis: the generations must have been fitted by the model's own heat rule. `origin`: heat on that axis at the model's
 * start (0 for a calendar start on the first day of the axis; the heat of the biofix otherwise).
 *
 * `early` and `late` only when the whole 80 % interval lies outside the tolerance; `cannot tell` when the interval is
 * wider than half a generation, when no flight is within half a generation, or when the number of flights is unsure.
 */
export function flightAgreement(generations: Generations, model: PhenologyModel, origin = 0): readonly FlightAgreement[] {
  const generation = generations.unit === 'F' ? GENERATION_F : GENERATION_F / 1.8;
  return flightEvents(model).map((event): FlightAgreement => {
    const compared = event.event === 'peak-flight' ? 'peak' : 'start';
    const published = origin + event.from;
    const tolerance = AGREEMENT_TOLERANCE * event.from;
    const near = nearest(generations.flights, compared, published);
    const shown = { event, compared, published, tolerance } as const;
    if (near === null || Math.abs(near[compared].heat - published) > NEAR * generation)
      return { ...shown, flight: null, found: null, difference: null, verdict: 'cannot tell', why: 'no-flight-near' };
    const { heat, low, high } = near[compared];
    const doubt = generations.unsure
      ? 'number-of-flights-unsure'
      : high - low > NEAR * generation
        ? 'moment-too-uncertain'
        : null;
    return {
      ...shown,
      flight: near.number,
      found: { heat, low, high },
      difference: heat - published,
      verdict: doubt ? 'cannot tell' : verdictOf(low, high, published, tolerance),
      why: doubt,
    };
  });
}

function verdictOf(low: number, high: number, published: number, tolerance: number): FlightAgreement['verdict'] {
  if (high < published - tolerance) return 'early';
  if (low > published + tolerance) return 'late';
  return 'agrees';
}

/** One event for each flight: its peak where the model dates one, otherwise its first moths. */
function flightEvents({ events }: PhenologyModel): ModelEvent[] {
  const peaks = events.filter(({ event }) => event === 'peak-flight');
  const firsts = events.filter(({ event }) => event === 'first-moth' || event === 'adult-emergence' || event === 'next-adults');
  const undated = firsts.filter(({ generation }) => !peaks.some((peak) => peak.generation === generation));
  return [...peaks, ...undated].sort((a, b) => a.from - b.from);
}

function nearest(flights: readonly Flight[], moment: 'start' | 'peak', heat: number): Flight | null {
  const distance = (flight: Flight) => Math.abs(flight[moment].heat - heat);
  return flights.reduce<Flight | null>((best, flight) => (best && distance(best) <= distance(flight) ? best : flight), null);
}
