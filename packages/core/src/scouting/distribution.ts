/** How counts per sample unit scatter about their mean. */
export type CountDistribution =
  /** Variance m + m²/k: clumped insects. */
  | { readonly kind: 'negative-binomial'; readonly k: number }
  /** Insects placed independently of one another. */
  | { readonly kind: 'poisson' }
  /** A unit is infested or not: the count is 1 or 0 and the mean is the share infested. */
  | { readonly kind: 'binomial' };

export function varianceOf(distribution: CountDistribution, mean: number): number {
  if (distribution.kind === 'poisson') return mean;
  if (distribution.kind === 'binomial') return mean * (1 - mean);
  return mean + mean ** 2 / distribution.k;
}

/**
 * How many times wider than under independence the total of `units` neighbours scatters when any two of them are
 * correlated: 1 + (units − 1)·ρ. Source: Kish 1965, Survey Sampling (from memory).
 */
export const designEffect = (units: number, correlation: number): number => 1 + (units - 1) * correlation;

/**
 * Probabilities of 0, 1, … `most` insects, or infested units, on the `units` neighbours at one place, when ρ is the
 * correlation of any two of them.
 *
 * Infested units are beta-binomial. Counts are negative binomial with the variance n·V·(1 + (n − 1)·ρ) of a place's
 * total, V that of one unit: exact for ρ = 0, by matched moments else.
 */
export function placeProbabilities(
  distribution: CountDistribution,
  mean: number,
  units: number,
  correlation: number,
  most: number,
): Float64Array {
  if (distribution.kind === 'binomial') return betaBinomial(units, mean, correlation, most);
  const total = units * mean;
  const excess = units * varianceOf(distribution, mean) * designEffect(units, correlation) - total;
  return counted(total, excess > 0 ? total ** 2 / excess : Infinity, most);
}

/** Source: Skellam 1948, Journal of the Royal Statistical Society B 10:257–261 (from memory); ρ = 1/(a + b + 1). */
function betaBinomial(units: number, share: number, correlation: number, most: number): Float64Array {
  const p = new Float64Array(most + 1);
  if (share >= 1) {
    if (units <= most) p[units] = 1;
    return p;
  }
  // In steps of ρ/(1 − ρ), so that ρ = 0 needs no case of its own.
  const step = correlation / (1 - correlation);
  p[0] = 1;
  for (let j = 0; j < units; j++) p[0] *= (1 - share + j * step) / (1 + j * step);
  for (let y = 1; y <= Math.min(units, most); y++) {
    p[y] = (p[y - 1]! * ((units - y + 1) / y) * (share + (y - 1) * step)) / (1 - share + (units - y) * step);
  }
  return p;
}

function counted(mean: number, k: number, most: number): Float64Array {
  const p = new Float64Array(most + 1);
  p[0] = k === Infinity ? Math.exp(-mean) : Math.exp(-k * Math.log1p(mean / k));
  for (let y = 1; y <= most; y++) {
    const odds = k === Infinity ? mean / y : ((k + y - 1) / y) * (mean / (mean + k));
    p[y] = p[y - 1]! * odds;
  }
  return p;
}
