const EARTH_RADIUS_KM = 6371.0088;

interface Place {
  readonly latitude: number | null;
  readonly longitude: number | null;
}

/** Great-circle distance by the haversine formula on a sphere of the mean radius (IUGG); null when a place has no coordinates. */
export function distanceKm(a: Place, b: Place): number | null {
  if (a.latitude === null || a.longitude === null || b.latitude === null || b.longitude === null) return null;
  const rad = Math.PI / 180;
  const dLat = (b.latitude - a.latitude) * rad;
  const dLon = (b.longitude - a.longitude) * rad;
  const h = Math.sin(dLat / 2) ** 2 + Math.cos(a.latitude * rad) * Math.cos(b.latitude * rad) * Math.sin(dLon / 2) ** 2;
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(h)));
}

/** Direction from one place to another at the outset of the great circle, in degrees clockwise from north, [0, 360); null when a place has no coordinates. */
export function bearingDegrees(from: Place, to: Place): number | null {
  if (from.latitude === null || from.longitude === null || to.latitude === null || to.longitude === null) return null;
  const rad = Math.PI / 180;
  const [a, b, dLon] = [from.latitude * rad, to.latitude * rad, (to.longitude - from.longitude) * rad];
  const east = Math.sin(dLon) * Math.cos(b);
  const north = Math.cos(a) * Math.sin(b) - Math.sin(a) * Math.cos(b) * Math.cos(dLon);
  return (Math.atan2(east, north) / rad + 360) % 360;
}
