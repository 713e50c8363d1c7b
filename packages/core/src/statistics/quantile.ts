/** A distribution of positive numbers, with the density taken per unit of ln x: dP/d ln x. */
export interface LogScaled {
  readonly probabilityUpTo: (x: number) => number;
  readonly densityOfLog: (x: number) => number;
}

/**
 * The x up to which a distribution holds probability `p`, 0 < p < 1.
 *
 * Newton's method on the log-odds of P against ln x, nearly a straight line for gamma-like distributions, inside a
 * bracket that halves where a step would leave it, until a step changes x by no more than the share `within`.
 */
export function quantile(p: number, { probabilityUpTo, densityOfLog }: LogScaled, firstGuess: number, within = 1e-13): number {
  let [below, above] = [0, Infinity];
  let x = firstGuess;
  for (let step = 0; step < 200; step++) {
    const reached = probabilityUpTo(x);
    if (reached < p) below = x;
    else above = x;
    const change = ((logOdds(p) - logOdds(reached)) * reached * (1 - reached)) / densityOfLog(x);
    const next = x * Math.exp(change);
    if (Math.abs(change) <= within) return next;
    if (next > below && next < above) x = next;
    else if (above === Infinity) x *= 2;
    else x = below === 0 ? above / 2 : Math.sqrt(below * above);
  }
  return x;
}

const logOdds = (p: number) => Math.log(p / (1 - p));

/** A standard normal quantile good enough to start from: the logistic one, scaled. */
export const roughNormalQuantile = (p: number) => logOdds(p) / 1.702;
