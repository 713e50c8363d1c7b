export type LengthUnit = 'm' | 'ft';

/** One international foot, exactly (NIST Special Publication 811, appendix B.8). */
const METRES_PER_FOOT = 0.3048;
const FEET_PER_MILE = 5280;

/** A length in the unit asked for, from metres. */
export function fromMetres(metres: number, unit: LengthUnit): number {
  return unit === 'm' ? metres : metres / METRES_PER_FOOT;
}

/** A way in kilometres, or in miles where lengths are in feet, from kilometres. */
export function fromKilometres(kilometres: number, unit: LengthUnit): number {
  return unit === 'm' ? kilometres : (kilometres * 1000) / METRES_PER_FOOT / FEET_PER_MILE;
}
