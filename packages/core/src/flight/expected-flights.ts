/** When this insect's flights peak in other seasons: what a running flight may be expected to be before it has shown itself. */
import { degreeDaysIn, type TemperatureUnit } from '../base/temperature.ts';
import type { Belief } from './belief.ts';
import { normalDensity } from './normal.ts';

/** A flight of a season that is over, in one region. */
export interface EarlierFlight {
  /** Degree-days at which half had flown, and its width. */
  readonly peak: number;
  readonly width: number;
  /** Moths per trap. */
  readonly moths: number;
}

export interface ExpectedFlight {
  readonly peak: Belief;
  /** Null where only the model tells of the flight. */
  readonly logWidth: Belief | null;
  /** Of ln moths per trap. */
  readonly logMoths: Belief | null;
  /** Share of the seasons behind it that had the flight. */
  readonly share: number;
  /** Seasons that had it. */
  readonly seasons: number;
  /** Where the model puts the peak; null: it dates none here. */
  readonly published: number | null;
}

/** A published heat is taken as good to a tenth of itself for another region. Own choice, no source. */
export const PUBLISHED_TOLERANCE = 0.1;
/**
 * How flights of one region, as they are read, differ from year to year on the heat axis: the peak by 78 °F·d (70, and 35
 * by which one is misread), the width by a fifth, the moths per trap 2.2-fold, as one standard deviation. Own choices; the
 * first and the last give way to the seasons at hand, weighing six of them.
 */
const YEARS = { peakC: 78 / 1.8, misreadC: 35 / 1.8, logWidth: 0.2, logMoths: 0.8, weigh: 6 };
/** Peaks of two years nearer than this are of the same flight: about a third of a generation. Own choice. */
const SAME_FLIGHT_C = 330 / 1.8;
/** The width of one past flight weighs five times as much as what is believed of widths anyway. */
const WIDTH_BELIEF = 0.2;

/** `published`: peaks the model dates on this axis. `width`: what is believed of the width of any flight. */
export function expectedFlights(
  past: readonly (readonly EarlierFlight[])[],
  published: readonly number[],
  { unit, width }: { readonly unit: TemperatureUnit; readonly width: Belief },
): ExpectedFlight[] {
  const near = degreeDaysIn(SAME_FLIGHT_C, unit);
  const kinds = published.map((peak): { published: number | null; flights: EarlierFlight[] } => ({
    published: peak,
    flights: [],
  }));
  const seasons = past.filter((flights) => flights.length > 0);
  for (const flight of seasons.flat()) {
    const middle = ({ published: at, flights }: (typeof kinds)[number]) =>
      flights.length > 0 ? mean(flights.map(({ peak }) => peak)) : at!;
    const ranked = [...kinds].sort((a, b) => Math.abs(middle(a) - flight.peak) - Math.abs(middle(b) - flight.peak));
    const kind = ranked[0];
    if (kind && Math.abs(middle(kind) - flight.peak) < near) kind.flights.push(flight);
    else kinds.push({ published: null, flights: [flight] });
  }
  const known = kinds.filter(({ flights }) => flights.length > 0 || seasons.length === 0);
  const peakVariance = pooledVariance(
    known.map(({ flights }) => flights.map(({ peak }) => peak)),
    degreeDaysIn(YEARS.peakC, unit),
  );
  // Where the next flight truly peaks is asked, not where it will be read.
  const misread = degreeDaysIn(YEARS.misreadC, unit) ** 2;
  const mothsVariance = pooledVariance(
    known.map(({ flights }) => flights.map(({ moths }) => Math.log(moths))),
    YEARS.logMoths,
  );
  return known
    .map(({ published: at, flights }): ExpectedFlight => {
      const n = flights.length;
      const [peaks, moths, widths] = [
        flights.map(({ peak }) => peak),
        flights.map((one) => Math.log(one.moths)),
        flights.map((one) => Math.log(one.width)),
      ];
      return {
        peak: next(peaks, peakVariance, at === null ? null : { mean: at, sd: PUBLISHED_TOLERANCE * at }, misread),
        logWidth:
          n === 0
            ? null
            : {
                mean: (n * mean(widths) + WIDTH_BELIEF * width.mean) / (n + WIDTH_BELIEF),
                sd: YEARS.logWidth * Math.sqrt(1 + 1 / n),
              },
        logMoths: n === 0 ? null : next(moths, mothsVariance, null),
        share: seasons.length === 0 ? 1 : n / seasons.length,
        seasons: n,
        published: at,
      };
    })
    .sort((a, b) => a.peak.mean - b.peak.mean);
}

/**
 * The figure of the season to come, from those of past seasons about a mean that is itself believed beforehand. `misread`:
 * the part of their variance by which they were read wrongly.
 */
function next(values: readonly number[], variance: number, belief: Belief | null, misread = 0): Belief {
  const trust = belief ? 1 / belief.sd ** 2 : 0;
  const precision = values.length / variance + trust;
  const sum = values.reduce((total, value) => total + value, 0);
  return {
    mean: (sum / variance + trust * (belief?.mean ?? 0)) / precision,
    sd: Math.sqrt(Math.max(variance - misread, variance / 2) + 1 / precision),
  };
}

/** Variance within groups about each group's mean, held by a standard deviation that weighs `YEARS.weigh` values. */
function pooledVariance(groups: readonly (readonly number[])[], sd: number): number {
  let [squares, free] = [YEARS.weigh * sd * sd, YEARS.weigh];
  for (const group of groups) {
    if (group.length < 2) continue;
    const middle = mean(group);
    for (const value of group) squares += (value - middle) ** 2;
    free += group.length - 1;
  }
  return squares / free;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Density of peaks to be expected at a heat, each by the share of seasons that had it. */
export function densityAt(expected: readonly ExpectedFlight[], heat: number): number {
  return expected.reduce((sum, { peak, share }) => sum + (share * normalDensity((heat - peak.mean) / peak.sd)) / peak.sd, 0);
}

/** The expected flight whose peak lies nearest. */
export function nearestTo(expected: readonly ExpectedFlight[], heat: number): ExpectedFlight | null {
  const distance = ({ peak }: ExpectedFlight) => Math.abs(peak.mean - heat);
  return expected.reduce<ExpectedFlight | null>((best, one) => (best && distance(best) <= distance(one) ? best : one), null);
}

/** An expected flight further away than this many standard deviations is another. */
const FORESEEN = 3;

/** The expected flight that one with this peak may be; null where none was to be expected. */
export function foreseenAt(expected: readonly ExpectedFlight[], heat: number): ExpectedFlight | null {
  const nearest = nearestTo(expected, heat);
  return nearest && Math.abs(nearest.peak.mean - heat) < FORESEEN * nearest.peak.sd ? nearest : null;
}

/** Slope of ln(1 + density/anywhere) at a heat, and the precision of the beliefs that pull there. */
export function densitySlopeAt(
  expected: readonly ExpectedFlight[],
  heat: number,
  anywhere: number,
): { readonly slope: number; readonly trust: number } {
  const total = anywhere + densityAt(expected, heat);
  let [slope, trust] = [0, 0];
  for (const { peak, share } of expected) {
    const part = (share * normalDensity((heat - peak.mean) / peak.sd)) / peak.sd / total;
    slope += (part * (peak.mean - heat)) / peak.sd ** 2;
    trust += part / peak.sd ** 2;
  }
  return { slope, trust };
}
