/** How alike neighbours are, from samples whose places were written down one by one. */
import { PLAN_ASSUMPTIONS } from './assumptions.ts';
import { designEffect } from './distribution.ts';

/** What was found at each place of one sample. */
export interface PlaceCounts {
  readonly infested: number;
  readonly examined: number;
}

export interface Clumping {
  /** ρ, correlation of any two units at one place: 0 to below 1. */
  readonly correlation: number;
  /** Own samples behind it, and their places; 0: it is assumed. */
  readonly samples: number;
  readonly places: number;
}

/**
 * ρ by the method of moments. Over the places of a sample with share p the sum of (yᵢ − nᵢ·p)²/nᵢ is on average
 * p·(1 − p)·Σ (1 − nᵢ/N)·(1 + (nᵢ − 1)·ρ); all samples are taken together, and the assumed ρ with them, which weighs as
 * much as so many places of the usual size. A sample's own share hides part of the scatter: p·(1 − p) is its estimate
 * over 1 − D/N, with D the design effect. Samples with nothing or everything infested, or with one place, tell nothing.
 *
 * Source: moment estimator for the beta-binomial, Williams 1982, Applied Statistics 31:144–148 (from memory).
 */
export function clumpingOf(samples: readonly (readonly PlaceCounts[])[]): Clumping {
  const telling = samples
    .filter((places) => places.length > 1)
    .map(scatterOf)
    .filter(({ spread }) => spread > 0);
  const assumed = PLAN_ASSUMPTIONS.placeCorrelation.value;
  const places = sum(telling.map((each) => each.places));
  let correlation = assumed;
  for (let i = 0; telling.length > 0 && i < ITERATIONS; i++) {
    const spreads = telling.map(({ spread, examined, places: n }) => {
      const left = 1 - designEffect(examined / n, correlation) / examined;
      return spread / left;
    });
    const usual =
      PLAN_ASSUMPTIONS.assumedPlaces.value * (PLAN_ASSUMPTIONS.unitsAtOnce.value - 1) * (sum(spreads) / spreads.length);
    const excess = sum(telling.map(({ squares, chance }, s) => squares - spreads[s]! * chance));
    const scale = sum(telling.map(({ neighbours }, s) => spreads[s]! * neighbours));
    correlation = Math.min(MOST, Math.max(0, (excess + usual * assumed) / (scale + usual)));
  }
  return { correlation, samples: telling.length, places };
}

/** Sums over the places of one sample. */
function scatterOf(sample: readonly PlaceCounts[]) {
  const examined = sum(sample.map((place) => place.examined));
  const share = sum(sample.map((place) => place.infested)) / examined;
  const weights = sample.map((place) => 1 - place.examined / examined);
  return {
    examined,
    places: sample.length,
    spread: share * (1 - share),
    squares: sum(sample.map(({ infested, examined: n }) => (infested - n * share) ** 2 / n)),
    chance: sum(weights),
    neighbours: sum(weights.map((weight, i) => weight * (sample[i]!.examined - 1))),
  };
}

/** Each sets what the samples' own shares hide by the ρ of the one before; they settle at once. */
const ITERATIONS = 20;

/** Places that are all or none leave nothing to sample. */
const MOST = 0.9;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** As samples of one insect show it that say what each place held. */
export const clumpingFound = (
  samples: readonly { readonly insect: string; readonly byPlace?: readonly string[] | undefined }[],
  insect: string,
): Clumping => clumpingOf(samples.filter((sample) => sample.insect === insect).map(({ byPlace = [] }) => placeCounts(byPlace)));

/** `1/5`: one infested of five examined at a place, as records hold it. */
export const placeCounts = (byPlace: readonly string[]): PlaceCounts[] =>
  byPlace.map((place) => {
    const [infested, examined] = place.split('/').map(Number);
    return { infested: infested!, examined: examined! };
  });
