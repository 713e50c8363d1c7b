/**
 * The logarithm of the gamma function and its first two derivatives, for positive real arguments.
 *
 * Each is Stirling's asymptotic series, reached from small arguments by the recurrence Γ(x + 1) = x·Γ(x).
 * Relative error below 1e-13, or absolute error below 1e-14 near the zeros (1 and 2 for ln Γ, 1.4616 for ψ).
 *
 * Source: Abramowitz & Stegun 1964, 6.1.40, 6.3.5, 6.3.18, 6.4.6, 6.4.12. Checked against R.
 */

/** From here on five terms of each series leave less than rounding. */
const SERIES_FROM = 12;
const HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/** ln Γ(x), x > 0. */
export function logGamma(x: number): number {
  return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingError(x);
}

/** ln Γ(x) less Stirling's approximation (x − ½)·ln x − x + ½·ln 2π; small, and precise where ln Γ itself is large. */
export function stirlingError(x: number): number {
  if (x >= SERIES_FROM) {
    const r = 1 / (x * x);
    return (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / x;
  }
  const shift = Math.ceil(SERIES_FROM - x);
  const far = x + shift;
  let product = 1;
  for (let i = 0; i < shift; i++) product *= x + i;
  return stirlingError(far) + (far - 0.5) * Math.log(far) - (x - 0.5) * Math.log(x) - shift - Math.log(product);
}

/** ψ(x) = d ln Γ(x)/dx, x > 0. */
export function digamma(x: number): number {
  let passed = 0;
  while (x < SERIES_FROM) passed += 1 / x++;
  const r = 1 / (x * x);
  return Math.log(x) - 0.5 / x - r * (1 / 12 - r * (1 / 120 - r * (1 / 252 - r * (1 / 240 - r / 132)))) - passed;
}

/** ψ′(x), x > 0. */
export function trigamma(x: number): number {
  let passed = 0;
  for (; x < SERIES_FROM; x++) passed += 1 / (x * x);
  const r = 1 / (x * x);
  const tail = (1 + 0.5 / x + r * (1 / 6 - r * (1 / 30 - r * (1 / 42 - r * (1 / 30 - (r * 5) / 66))))) / x;
  return passed + tail;
}
