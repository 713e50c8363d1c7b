/** Random variates by textbook methods. */
import type { Random } from './prng.ts';

/** Largest mean for which multiplying uniforms stays quick and above underflow. */
const POISSON_DIRECT_MEAN = 20;

/** Standard normal: Box & Muller 1958, Ann. Math. Stat. 29:610–611 (one of the pair). */
export function normal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}

/** Exponential with the given mean, by inversion. */
export function exponential(random: Random, mean: number): number {
  return -mean * Math.log(1 - random());
}

/**
 * Gamma with the given shape and mean: Marsaglia & Tsang 2000, ACM Trans. Math. Softw. 26:363–372; shapes
 * below 1 by their boost, Γ(a) = Γ(a+1)·U^(1/a).
 */
export function gamma(random: Random, shape: number, mean: number): number {
  if (shape < 1) return (gamma(random, shape + 1, 1) * (shape + 1) * random() ** (1 / shape) * mean) / shape;
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal(random);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return (d * v * mean) / shape;
  }
}

/** Poisson: multiplied uniforms (Knuth, The Art of Computer Programming 2, §3.4.1); large means as a sum of two halves. */
export function poisson(random: Random, mean: number): number {
  if (mean > POISSON_DIRECT_MEAN) return poisson(random, mean / 2) + poisson(random, mean / 2);
  const floor = Math.exp(-mean);
  let events = 0;
  for (let product = random(); product > floor; product *= random()) events++;
  return events;
}

/** Negative binomial with variance mean + mean²/k: a Poisson whose mean is gamma (Greenwood & Yule 1920, J. R. Stat. Soc. 83:255–279). */
export function negativeBinomial(random: Random, mean: number, k: number): number {
  return mean > 0 ? poisson(random, gamma(random, k, mean)) : 0;
}
