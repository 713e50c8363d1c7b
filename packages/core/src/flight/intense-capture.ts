/**
 * An intense capture hidden inside the nights between two visits.
 *
 * A visit tells how many moths came in its nights together, not in which. Moths of one night are taken as negative
 * binomial with one dispersion k, so that, given their sum, the nights of a visit are Dirichlet-multinomial with k for
 * every night: a sequence x₁ … xₙ with sum c has the probability Π w(xᵢ) / W, where w(x) = Γ(x + k) / (Γ(k) x!) and W is
 * the same for n nights of k together. (The distribution of negative binomial counts given their sum: Johnson, Kotz &
 * Balakrishnan 1997, Discrete Multivariate Distributions, chapter 36, from memory.)
 */

import { addDays, type Day } from '../base/day.ts';
import type { BiofixRule } from '../catalogue/types.ts';
import type { CatchInterval } from '../catch/types.ts';
import { logGamma } from '../statistics/gamma-function.ts';

type IntenseCapture = BiofixRule & { readonly kind: 'intense-capture' };

export interface CaptureByNight {
  /** The day that begins the night, and the visit that ended its interval. */
  readonly night: Day;
  readonly interval: number;
  /** Probability that the rule was reached by the end of this night, by what is known at the interval's visit. */
  readonly reached: number;
}

/**
 * Night by night, how probable it is that `moths` or more had come within `nights` nights in a row (two or more). Exact,
 * by following the last nights' counts and the interval's sum over every sequence in which the rule is not yet reached.
 * Nights without information break a run.
 *
 * @param k dispersion of one night's count
 */
export function captureByNight(rule: IntenseCapture, intervals: readonly CatchInterval[], k: number): CaptureByNight[] {
  const out: CaptureByNight[] = [];
  /** Weight of "not yet reached" by the counts of the nights that a window may still hold, the newest last. */
  let open = new Map<string, { readonly last: readonly number[]; readonly weight: number }>([['', { last: [], weight: 1 }]]);
  for (const [index, interval] of intervals.entries()) {
    const { count, nights, from } = interval;
    if (count === null) {
      const weight = [...open.values()].reduce((sum, state) => sum + state.weight, 0);
      open = new Map([['', { last: [], weight }]]);
      continue;
    }
    let states = [...open.values()].map((state) => ({ ...state, sum: 0 }));
    const whole = logWeight(count, nights * k);
    for (let night = 0; night < nights; night++) {
      const next = new Map<string, { last: readonly number[]; weight: number; sum: number }>();
      const isLast = night === nights - 1;
      for (const { last, weight, sum } of states) {
        const room = Math.min(count - sum, rule.moths - 1 - last.reduce((a, b) => a + b, 0));
        for (let x = isLast ? count - sum : 0; x <= room; x++) {
          const kept = [...last, x].slice(-(rule.nights - 1));
          const key = `${kept.join()}|${sum + x}`;
          const added = weight * Math.exp(logWeight(x, k));
          const held = next.get(key);
          if (held) held.weight += added;
          else next.set(key, { last: kept, weight: added, sum: sum + x });
        }
      }
      states = [...next.values()];
      const left = nights - 1 - night;
      const notYet = states.reduce(
        (all, { weight, sum }) => all + (left === 0 ? weight : weight * Math.exp(logWeight(count - sum, left * k))),
        0,
      );
      out.push({ night: addDays(from, night), interval: index, reached: 1 - Math.min(1, notYet * Math.exp(-whole)) });
    }
    open = new Map();
    for (const { last, weight } of states) {
      const key = last.join();
      const held = open.get(key)?.weight ?? 0;
      open.set(key, { last, weight: held + weight * Math.exp(-whole) });
    }
  }
  return out;
}

/** ln Γ(x + k) / (Γ(k) x!): the weight of x moths in nights of dispersion k. */
const logWeight = (x: number, k: number): number => logGamma(x + k) - logGamma(k) - logGamma(x + 1);
