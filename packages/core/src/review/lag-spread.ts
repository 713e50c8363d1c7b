/** How far the likeliest lag would move if other fields like these had been sampled. */
import { type FitAtLag, peakLag, type WithoutField } from './infestation-fit.ts';

/** Draws of field weights. Own choice: their standard deviation is then known to a twentieth. */
const DRAWS = 300;
const SEED = 2463534242;

/**
 * Standard error of the likeliest lag by the Bayesian bootstrap of fields: each field's part of the ln-likelihood at a lag
 * is what is lost without the field, and counts with an exponential weight of mean 1. The peak of the likelihood jumps from
 * one lag to another, which leaving out single fields hardly shows. The lags tried are `spacing` apart: what that hides is added.
 *
 * Source: Rubin 1981, The Bayesian bootstrap, Annals of Statistics 9:130–134 (from memory). How well it holds is in
 * docs/review-skill.md. The draws are always the same ones, so that the same records give the same answer.
 */
export function lagSpread(fits: readonly FitAtLag[], without: readonly WithoutField[], spacing: number): number {
  const parts = without.map(({ fits: left }) =>
    fits.map(({ lag, logLikelihood }) => {
      const same = left.find((fit) => fit.lag === lag);
      return same === undefined ? 0 : logLikelihood - same.logLikelihood;
    }),
  );
  const uniform = draws(SEED);
  let [sum, squares] = [0, 0];
  for (let draw = 0; draw < DRAWS; draw++) {
    const weights = parts.map(() => -Math.log(uniform()));
    const total = weights.reduce((all, weight) => all + weight, 0);
    const weighed = fits.map((fit, i) => ({
      ...fit,
      logLikelihood: parts.reduce((all, own, field) => all + own[i]! * weights[field]!, 0) / total,
    }));
    const peak = peakLag(weighed)!;
    sum += peak;
    squares += peak ** 2;
  }
  const variance = Math.max(0, squares / DRAWS - (sum / DRAWS) ** 2);
  return Math.sqrt(variance + spacing ** 2 / 24);
}

/** Uniform on (0, 1): xorshift32, Marsaglia 2003. */
function draws(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((state >>> 0) + 0.5) / 2 ** 32;
  };
}
