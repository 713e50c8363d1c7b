/**
 * Heat above a threshold under a sine wave from `tmin` to `tmax`, in degree-days of the unit given.
 *
 * With mean m, amplitude a and θ = asin((T − m)/a) the angle at which the wave crosses T:
 * ((m − T)(π/2 − θ) + a·cos θ)/π. The same holds for a whole day's wave and for its rising or falling half.
 *
 * Baskerville & Emin 1969, Ecology 50:514–517; Allen 1976, Environ. Entomol. 5:388–396.
 *
 * @example sineHeatAbove(40, 60, 50) // 10/π = 3.1831 °F·d
 */
export function sineHeatAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmax <= threshold) return 0;
  const mean = (tmax + tmin) / 2;
  if (tmin >= threshold) return mean - threshold;
  const amplitude = (tmax - tmin) / 2;
  const sine = crossing(mean, amplitude, threshold);
  return ((mean - threshold) * (Math.PI / 2 - Math.asin(sine)) + amplitude * Math.sqrt(1 - sine * sine)) / Math.PI;
}

/** Share of the day, 0 to 1, that the wave spends above the threshold. */
export function sineTimeAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmax <= threshold) return 0;
  if (tmin > threshold) return 1;
  return 0.5 - Math.asin(crossing((tmax + tmin) / 2, (tmax - tmin) / 2, threshold)) / Math.PI;
}

/** sin θ. Rounding can carry it a hair past ±1 when the threshold all but touches an extreme. */
function crossing(mean: number, amplitude: number, threshold: number): number {
  return Math.max(-1, Math.min(1, (threshold - mean) / amplitude));
}
