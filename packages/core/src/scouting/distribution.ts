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

/** Probabilities of 0, 1, … `most` insects in one unit. */
export function probabilities(distribution: CountDistribution, mean: number, most: number): Float64Array {
  const p = new Float64Array(most + 1);
  if (distribution.kind === 'binomial') {
    p[0] = 1 - mean;
    if (most > 0) p[1] = mean;
    return p;
  }
  const k = distribution.kind === 'poisson' ? Infinity : distribution.k;
  p[0] = k === Infinity ? Math.exp(-mean) : Math.exp(-k * Math.log1p(mean / k));
  for (let y = 1; y <= most; y++) {
    const odds = k === Infinity ? mean / y : ((k + y - 1) / y) * (mean / (mean + k));
    p[y] = p[y - 1]! * odds;
  }
  return p;
}
