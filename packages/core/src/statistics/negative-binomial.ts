/**
 * The negative binomial distribution of counts, with mean m and dispersion k: variance m + m²/k. Small k, clumped
 * counts; k = ∞, Poisson.
 *
 * Ratios of gamma functions in k are sums over the counts below each count, so the likelihood needs only how many
 * counts exceed 0, 1, 2, …: Bliss & Fisher's accumulated frequencies.
 *
 * Source: Bliss & Fisher 1953, Biometrics 9:176–200.
 */
import { logGamma } from './gamma-function.ts';
import { problem } from './regression.ts';

/** Beyond this k, counts of any usual size cannot be told from Poisson ones. */
const LARGEST_K = 1e7;

export const notCounts = () => problem('y', 'a value that is no count', 'whole numbers from 0', 'Correct or leave out the row.');

/** k as a fit shows it. */
export function describeK(table: CountTable, mean: Float64Array, k: number) {
  const overdispersed = k !== Infinity;
  const information = overdispersed ? -derivatives(table, mean, k).second : Number.NaN;
  return { k, kStandardError: information > 0 ? 1 / Math.sqrt(information) : null, overdispersed };
}

export interface CountTable {
  readonly counts: Float64Array;
  readonly total: number;
  /** exceeding[j]: how many counts are above j. */
  readonly exceeding: Float64Array;
  /** Σ ln y!. */
  readonly logFactorials: number;
}

/** Null when some value is no count. */
export function countTable(values: ArrayLike<number>): CountTable | null {
  const counts = Float64Array.from(values);
  if (!counts.every((count) => Number.isInteger(count) && count >= 0)) return null;
  let [total, largest, logFactorials] = [0, 0, 0];
  for (const count of counts) {
    total += count;
    largest = Math.max(largest, count);
    if (count > 1) logFactorials += logGamma(count + 1);
  }
  const exceeding = new Float64Array(largest);
  for (const count of counts) if (count > 0) exceeding[count - 1]!++;
  for (let j = largest - 2; j >= 0; j--) exceeding[j]! += exceeding[j + 1]!;
  return { counts, total, exceeding, logFactorials };
}

/** ln of the probability of all counts, each with its own mean and a common k (∞: Poisson). */
export function logLikelihood({ counts, exceeding, logFactorials }: CountTable, mean: Float64Array, k: number): number {
  let sum = -logFactorials;
  for (let j = 1; j < exceeding.length; j++) sum += exceeding[j]! * Math.log1p(j / k);
  for (let i = 0; i < counts.length; i++) {
    const [y, m] = [counts[i]!, mean[i]!];
    if (y > 0) sum += y * Math.log(m);
    sum -= k === Infinity ? m : (k + y) * Math.log1p(m / k);
  }
  return sum;
}

/**
 * The k of greatest likelihood for given means, from `start` if given; ∞ when likelihood grows toward Poisson.
 * Newton's method on ln k.
 */
export function maximiseK(table: CountTable, mean: Float64Array, start?: number): number {
  let k = start ?? momentK(table, mean);
  for (let i = 0; i < 100 && k < LARGEST_K; i++) {
    const { first, second } = derivatives(table, mean, k);
    const [slope, curvature] = [k * first, k * (k * second + first)];
    const step = curvature < 0 ? Math.max(-2, Math.min(2, -slope / curvature)) : 2 * Math.sign(slope);
    k *= Math.exp(step);
    if (Math.abs(step) < 1e-10) return k;
  }
  return k < LARGEST_K ? k : Infinity;
}

/** ∞ when the squared residuals are no larger than Poisson counts would leave: likelihood then falls away from k = ∞. */
function momentK({ counts }: CountTable, mean: Float64Array): number {
  let [squares, excess] = [0, 0];
  for (let i = 0; i < counts.length; i++) {
    squares += mean[i]! ** 2;
    excess += (counts[i]! - mean[i]!) ** 2 - counts[i]!;
  }
  return excess > 0 ? squares / excess : Infinity;
}

/** Of the log-likelihood by k. */
function derivatives({ counts, exceeding }: CountTable, mean: Float64Array, k: number): { first: number; second: number } {
  let [first, second] = [0, 0];
  for (let j = 0; j < exceeding.length; j++) {
    const term = 1 / (k + j);
    first += exceeding[j]! * term;
    second -= exceeding[j]! * term * term;
  }
  for (let i = 0; i < counts.length; i++) {
    const m = mean[i]!;
    const term = 1 / (k + m);
    const short = (m - counts[i]!) * term;
    first += short - Math.log1p(m / k);
    second += (m / k - short) * term;
  }
  return { first, second };
}
