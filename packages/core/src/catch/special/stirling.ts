/**
 * Pieces of the gamma function that keep their digits for large arguments, where differences of ln Γ would not.
 *
 * Source: Loader 2000, Fast and Accurate Computation of Binomial Probabilities (from memory).
 */

/** ln Γ(a + 1) less Stirling's approximation of it, (a + ½)·ln a − a + ½·ln 2π. */
export function stirlingError(a: number): number {
  if (a >= 10) {
    const r = 1 / (a * a);
    return (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / a;
  }
  const shift = Math.ceil(10 - a);
  const b = a + shift;
  let product = 1;
  for (let i = 1; i <= shift; i++) product *= a + i;
  return stirlingError(b) + (b + 0.5) * Math.log(b) - (a + 0.5) * Math.log(a) - shift - Math.log(product);
}

/** a·ln(a/x) + x − a: how far x lies from a, never below 0. */
export function deviance(a: number, x: number): number {
  const distance = (x - a) / a;
  return a * (distance - (Math.abs(distance) < 0.1 ? Math.log1p(distance) : Math.log(x / a)));
}
