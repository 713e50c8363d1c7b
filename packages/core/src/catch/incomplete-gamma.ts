/**
 * The gamma distribution with shape `a` and scale 1, from the regularised incomplete gamma function.
 *
 * Source: Abramowitz & Stegun 1964, 6.5.29 (series), 6.5.31 (continued fraction), 26.4.17 (Wilson & Hilferty's cube);
 * the common factor after Loader 2000, which stays exact for large shapes. From memory; checked against R.
 */

/** P(a, x): probability that a gamma variate of shape `a` > 0 is at most `x`. */
export function gammaCdf(x: number, a: number): number {
  if (x <= 0) return 0;
  if (x === Infinity) return 1;
  return x < a + 1 ? factor(x, a) * series(x, a) : 1 - factor(x, a) * a * continuedFraction(x, a);
}

/** The x with P(a, x) = p, for 0 < p < 1. */
export function gammaQuantile(p: number, a: number): number {
  let [below, above] = [0, Infinity];
  let x = firstGuess(p, a);
  for (let step = 0; step < 100; step++) {
    const excess = gammaCdf(x, a) - p;
    if (excess < 0) below = x;
    else above = x;
    const newton = (excess * x) / (factor(x, a) * a);
    const halley = newton / (1 - 0.5 * newton * ((a - 1) / x - 1));
    if (Math.abs(halley) <= 1e-13 * x) return x - halley;
    const inside = x - halley > below && x - halley < above;
    x = inside ? x - halley : above === Infinity ? 2 * x : (below + above) / 2;
  }
  return x;
}

/** x^a·e^−x / Γ(a + 1). */
function factor(x: number, a: number): number {
  const distance = (x - a) / a;
  const logRatio = Math.abs(distance) < 0.1 ? Math.log1p(distance) : Math.log(x / a);
  return Math.exp(-a * (distance - logRatio) - stirlingError(a)) / Math.sqrt(2 * Math.PI * a);
}

/** ln Γ(a + 1) less Stirling's approximation of it. */
function stirlingError(a: number): number {
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

function series(x: number, a: number): number {
  let [term, sum] = [1, 1];
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Lentz's evaluation of 1/(x + 1 − a − 1(1 − a)/(x + 3 − a − …)). */
function continuedFraction(x: number, a: number): number {
  let b = x + 1 - a;
  let c = Infinity;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 100_000; n++) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    value *= c * d;
    if (Math.abs(c * d - 1) <= 2 * Number.EPSILON) break;
  }
  return value;
}

function firstGuess(p: number, a: number): number {
  const roughNormal = Math.log(p / (1 - p)) / 1.702;
  const cube = 1 - 1 / (9 * a) + roughNormal / (3 * Math.sqrt(a));
  return cube > 0.2 ? a * cube ** 3 : a * 0.2 ** 3;
}
