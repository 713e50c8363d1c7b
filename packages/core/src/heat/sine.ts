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
  // Rounding can carry the ratio a hair past ±1 when the threshold all but touches an extreme.
  const sine = Math.max(-1, Math.min(1, (threshold - mean) / amplitude));
  return ((mean - threshold) * (Math.PI / 2 - Math.asin(sine)) + amplitude * Math.sqrt(1 - sine * sine)) / Math.PI;
}

/**
 * Share of the day, 0 to 1, that the wave spends above the threshold: (π/2 − θ)/π, by the tangent of half that angle, since
 * near the extremes the sine of θ no longer tells the time to more than half its digits.
 */
export function sineTimeAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmax <= threshold) return 0;
  if (tmin >= threshold) return 1;
  return (2 / Math.PI) * Math.atan2(Math.sqrt(tmax - threshold), Math.sqrt(threshold - tmin));
}
