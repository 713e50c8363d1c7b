/** Seasons that are over, as the next one learns from them. */
import { degreeDaysIn, type TemperatureUnit } from '../base/temperature.ts';
import type { Belief } from './belief.ts';
import type { EarlierFlight } from './expected-flights.ts';
import type { RegionFit } from './fit-region.ts';
import { heatOfMoment, mothsOf } from './flight-moments.ts';
import { byShape, skewEvidence, skewsAfter } from './skew.ts';

interface EarlierSeason {
  readonly flights: readonly EarlierFlight[];
  /** Moths per mean trap and night that belonged to no flight. */
  readonly strayPerNight: number;
}

/** What past seasons of a region tell the next one. */
export interface Experience {
  readonly seasons: readonly EarlierSeason[];
  /** Weights of the skews (`SKEWS`) of this insect's flights here; null without a past flight. */
  readonly skews: readonly number[] | null;
  /** Of ln stray moths per mean trap and night; null without a past season. */
  readonly stray: Belief | null;
}

/** A past peak placed more loosely than this (80 % interval, end to end) says nothing of the next one. Own choice. */
const LOOSE_C = 150 / 1.8;
/** How stray moths of one region differ from year to year: 2.7-fold, as one standard deviation. Own choice. */
const STRAY_LOG_SD = 1;

/**
 * Reads past seasons together: whether this insect's flights take longer to end than to begin is one thing for all of them,
 * and places their peaks. A peak lies half-way between what the fitted curves say, which scatters less, and where half had
 * been caught, which no wrong curve leads astray; the width is that of the catch. A season that shows no flight well enough
 * becomes one without flights.
 */
export function experienceOf(fits: readonly RegionFit[], unit: TemperatureUnit): Experience {
  const loose = degreeDaysIn(LOOSE_C, unit);
  const told = fits.map(({ flights, caught }) =>
    flights.flatMap((possible, g) => {
      const { low, high } = heatOfMoment(possible, 0);
      const curve = caught[g] ?? null;
      return high - low <= loose && curve !== null ? [{ possible, curve }] : [];
    }),
  );
  const skews = skewsAfter(told.flat().map(({ possible }) => skewEvidence(possible)));
  const seasons = told.map((flights, i): EarlierSeason => {
    const read = flights.map(({ possible, curve }): EarlierFlight => {
      const flight = byShape(possible, skews);
      return {
        peak: (heatOfMoment(flight, 0).heat + curve.half) / 2,
        width: curve.width,
        moths: mothsOf(flight).estimate,
      };
    });
    return { flights: read, strayPerNight: Math.exp(fits[i]!.fits[0]!.unknowns[0]!) };
  });
  const shown = seasons.filter(({ flights }) => flights.length > 0);
  const strays = shown.map(({ strayPerNight }) => Math.log(strayPerNight));
  const mean = strays.reduce((sum, one) => sum + one, 0) / strays.length;
  return {
    seasons,
    skews: shown.length === 0 ? null : skews,
    stray: shown.length === 0 ? null : { mean, sd: STRAY_LOG_SD * Math.sqrt(1 + 1 / shown.length) },
  };
}
