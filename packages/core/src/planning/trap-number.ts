/**
 * How many traps are enough: how sharply they show the mean catch, and how often they say the wrong thing of a rule.
 *
 * A trap visited after N nights counts NB(mean λN, dispersion k), independently of others, as in `estimateRate`. The
 * total of m such counts is then exactly NB(mean mλN, dispersion mk). More nights between visits sharpen only the Poisson
 * part of a count; the scatter between traps, 1/k, is met by more traps alone.
 */
import { studentLimit } from '../statistics/student.ts';

/** The mean and dispersion of the count of one trap at one visit; `k` null or ∞: Poisson. */
export interface VisitCounts {
  readonly mean: number;
  readonly k: number | null;
}

/**
 * Half-width of the interval of the mean of `counts` trap visits, as a share of the mean: z·√((1/μ + 1/k)/n).
 * `level` is the confidence of the interval; without one, z = 1 and the share is the standard error's.
 */
export function relativePrecision({ mean, k }: VisitCounts, counts: number, level: number | null = null): number {
  return deviate(level) * Math.sqrt((1 / mean + 1 / (k ?? Infinity)) / counts);
}

/**
 * Trap visits for precision D: n = z²·(1/μ + 1/k)/D². Not rounded.
 * Source: Karandinos 1976, Bull. Entomol. Soc. Am. 22:417–421, also in Southwood, Ecological Methods (both from memory).
 */
export function countsForPrecision({ mean, k }: VisitCounts, precision: number, level: number | null = null): number {
  return (deviate(level) ** 2 * (1 / mean + 1 / (k ?? Infinity))) / precision ** 2;
}

const deviate = (level: number | null): number => (level === null ? 1 : studentLimit(level, Infinity));

export interface Checking {
  readonly traps: number;
  readonly nightsBetweenChecks: number;
  /** Nights that the rule looks back over: 1 for a catch per night, 7 per week. */
  readonly windowNights: number;
  readonly k: number | null;
}

/** Visits to each trap that the catch is read from: whole ones, until they cover the window. */
export const visitsInWindow = ({ nightsBetweenChecks, windowNights }: Omit<Checking, 'traps' | 'k'>): number =>
  Math.max(1, Math.ceil(windowNights / nightsBetweenChecks - 1e-9));

/** Rates this close to a threshold are at it, whatever binary fractions say. */
const SLACK = 1e-9;

/** Probability that the mean catch reads at or above `threshold` when moths truly come at `rate` (both a trap and night). */
export function chanceOfReading(checking: Checking, rate: number, threshold: number): number {
  const counts = checking.traps * visitsInWindow(checking);
  const trapNights = counts * checking.nightsBetweenChecks;
  const atLeast = Math.ceil(threshold * trapNights * (1 - SLACK));
  return 1 - sumUpTo(atLeast - 1, rate * trapNights, checking.k === null ? Infinity : checking.k * counts);
}

/**
 * Probability of the wrong side of a rule at a true rate: below it though the rate reaches the threshold, or reached
 * though the rate is below.
 */
export function chanceOfWrongSide(checking: Checking, rate: number, threshold: number): number {
  const reads = chanceOfReading(checking, rate, threshold);
  return rate >= threshold * (1 - SLACK) ? 1 - reads : reads;
}

/** P(X ≤ last) for X negative binomial with a mean and dispersion, term by term from the one before. */
function sumUpTo(last: number, mean: number, k: number): number {
  if (last < 0) return 0;
  if (mean === 0) return 1;
  const none = k === Infinity ? -mean : -k * Math.log1p(mean / k);
  let logTerm = none;
  let sum = Math.exp(logTerm);
  for (let x = 1; x <= last; x++) {
    logTerm += k === Infinity ? Math.log(mean / x) : Math.log(((k + x - 1) / x) * (mean / (k + mean)));
    sum += Math.exp(logTerm);
  }
  return Math.min(1, sum);
}
