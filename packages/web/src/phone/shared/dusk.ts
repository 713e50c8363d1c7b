/** Whether it is dark outside, for a page that should not blind a scout after dusk. */

/** Below this the sky is dark enough for the night theme: the end of civil twilight. */
const CIVIL_TWILIGHT_DEG = -6;
const RAD = Math.PI / 180;

/**
 * Altitude of the sun in degrees, without refraction.
 *
 * Low-precision solar coordinates (about 0.01° between 1950 and 2050): Astronomical Almanac, section C, as given by
 * the US Naval Observatory; formulas from memory, checked in the test against Meeus's worked example.
 */
export function sunAltitudeDeg(at: Date, latitude: number, longitude: number): number {
  const { rightAscensionDeg, declinationDeg, siderealDeg } = sunAt(at);
  const hourAngle = (siderealDeg + longitude - rightAscensionDeg) * RAD;
  const phi = latitude * RAD;
  const delta = declinationDeg * RAD;
  return Math.asin(Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.cos(hourAngle)) / RAD;
}

export function sunAt(at: Date) {
  const days = at.getTime() / 86_400_000 - 10_957.5; // since J2000.0
  const meanAnomaly = (357.529 + 0.98560028 * days) * RAD;
  const meanLongitude = 280.459 + 0.98564736 * days;
  const longitude = (meanLongitude + 1.915 * Math.sin(meanAnomaly) + 0.02 * Math.sin(2 * meanAnomaly)) * RAD;
  const obliquity = (23.439 - 0.00000036 * days) * RAD;
  const rightAscension = Math.atan2(Math.cos(obliquity) * Math.sin(longitude), Math.cos(longitude)) / RAD;
  return {
    rightAscensionDeg: (rightAscension + 360) % 360,
    declinationDeg: Math.asin(Math.sin(obliquity) * Math.sin(longitude)) / RAD,
    /** At Greenwich. */
    siderealDeg: (280.46062 + 360.98564737 * days) % 360,
  };
}

export const isNight = (at: Date, latitude: number, longitude: number) =>
  sunAltitudeDeg(at, latitude, longitude) < CIVIL_TWILIGHT_DEG;
