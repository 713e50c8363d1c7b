/**
 * Heat above a threshold for a day taken to stand at one temperature, its mean: max(0, mean − T), in °C·d.
 *
 * The simple average. An upper threshold acts on the mean as on any curve: horizontal holds the mean at U, intermediate
 * takes twice the excess off, vertical counts nothing on a day whose mean is above U.
 */
export function flatHeatAbove(tmin: number, tmax: number, threshold: number): number {
  const mean = (tmin + tmax) / 2;
  return mean > threshold ? mean - threshold : 0;
}

/** Share of the day above the threshold, 0 or 1. */
export function flatTimeAbove(tmin: number, tmax: number, threshold: number): number {
  return (tmin + tmax) / 2 > threshold ? 1 : 0;
}

/**
 * The modified average: both extremes are held within [lower, upper] before the mean is taken, in °C·d.
 * At 50/86 °F the growing degree-day of corn and of many extension tables.
 *
 * @example modifiedAverage(50, 86, 40, 90) // (50 + 86)/2 − 50 = 18 °F·d
 */
export function modifiedAverage(lower: number, upper: number, tmin: number, tmax: number): number {
  return (hold(tmin, lower, upper) + hold(tmax, lower, upper)) / 2 - lower;
}

function hold(value: number, lower: number, upper: number): number {
  return Math.max(lower, Math.min(upper, value));
}
