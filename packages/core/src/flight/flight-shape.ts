/**
 * The curve a flight follows along the heat axis: normal, or begun sooner than done. With z = (heat − peak)/width,
 * a share Φ(u) has flown, u = ln(1 + skew·z)/skew, which is z itself where skew is 0 (a shifted log-normal curve). Half
 * has flown at the peak, whatever the skew, and the curve is as steep there as a normal one.
 */
import { normalCdf } from './normal.ts';

export interface FlightShape {
  /** Heat at which half has flown, and the width about it, in degree-days. */
  readonly peak: number;
  readonly width: number;
  /** 0: as long to end as to begin. */
  readonly skew: number;
}

/** The normal deviate up to which the flight has flown, at `z` widths after its peak. */
export function deviateAt(z: number, skew: number): number {
  if (skew === 0) return z;
  const stretched = 1 + skew * z;
  return stretched <= 0 ? Number.NEGATIVE_INFINITY : Math.log(stretched) / skew;
}

/** Widths after the peak at which the flight has flown up to the normal deviate `u`. */
export const widthsAt = (u: number, skew: number): number => (skew === 0 ? u : (Math.exp(skew * u) - 1) / skew);

/** Share flown, `z` widths after the peak. */
export const flownBy = (z: number, skew: number): number => {
  const u = deviateAt(z, skew);
  return u < -38 ? 0 : normalCdf(u);
};
