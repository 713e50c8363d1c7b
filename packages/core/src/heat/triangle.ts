/**
 * Heat above a threshold under straight lines from `tmin` to `tmax`, in degree-days of the unit given.
 *
 * The part of the triangle above T is (Tmax − T)/(Tmax − Tmin) of the day wide and Tmax − T high: half their product.
 *
 * Sevacherian et al. 1977, J. Econ. Entomol. 70:399–402; Roltsch et al. 1999, Int. J. Biometeorol. 42:169–176.
 *
 * @example triangleHeatAbove(40, 60, 50) // 10/4 = 2.5 °F·d
 */
export function triangleHeatAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmax <= threshold) return 0;
  if (tmin >= threshold) return (tmin + tmax) / 2 - threshold;
  return (tmax - threshold) ** 2 / (2 * (tmax - tmin));
}

/** Share of the day, 0 to 1, that the lines spend above the threshold. */
export function triangleTimeAbove(tmin: number, tmax: number, threshold: number): number {
  if (tmax <= threshold) return 0;
  if (tmin >= threshold) return 1;
  return (tmax - threshold) / (tmax - tmin);
}
