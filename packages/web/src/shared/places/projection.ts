/** Places on a plain plan: Web Mercator (EPSG:3857 on the unit square), as on the map itself. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/** [x, y] on the unit square: x from 180° W eastward, y from about 85° N southward. */
export function mercator({ latitude, longitude }: Place): readonly [number, number] {
  const sine = Math.sin((Math.min(Math.max(latitude, -85), 85) * Math.PI) / 180);
  return [longitude / 360 + 0.5, 0.5 - Math.log((1 + sine) / (1 - sine)) / (4 * Math.PI)];
}

export interface PlanFrame {
  readonly project: (place: Place) => readonly [number, number];
  /** Metres of ground under one pixel at the middle. */
  readonly metresPerPixel: number;
  /** Mercator of the upper left corner, and the unit square's length per pixel. */
  readonly corner: readonly [number, number];
  readonly unitPerPixel: number;
}

/** The place under a pixel of a plan. */
export function placeOn({ corner, unitPerPixel }: PlanFrame, x: number, y: number): Place {
  const [east, south] = [corner[0] + x * unitPerPixel, corner[1] + y * unitPerPixel];
  const latitude = (Math.atan(Math.sinh(Math.PI * (1 - 2 * south))) * 180) / Math.PI;
  return { latitude, longitude: (east - 0.5) * 360 };
}

/** Circumference of the Earth at the equator, WGS 84 semi-major axis × 2π. */
const EQUATOR_M = 2 * Math.PI * 6_378_137;
/** A single station needs some ground around it. */
const LEAST_SPAN_M = 800;

/**
 * All places inside the frame, north up.
 * @param size margins in pixels, of all sides or of those across and up
 * @param zoom 1 shows all; 2 half the width
 * @param shift pixels to move the ground by
 */
export function planOf(
  places: readonly Place[],
  size: { readonly width: number; readonly height: number; readonly margin: number | readonly [across: number, up: number] },
  zoom = 1,
  shift: readonly [number, number] = [0, 0],
): PlanFrame {
  const [across, up] = typeof size.margin === 'number' ? [size.margin, size.margin] : size.margin;
  const points = places.map(mercator);
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const latitude = (places.reduce((sum, place) => sum + place.latitude, 0) / Math.max(1, places.length)) * (Math.PI / 180);
  const unitM = EQUATOR_M * Math.cos(latitude);
  const least = LEAST_SPAN_M / unitM;
  const scale =
    zoom *
    Math.min((size.width - 2 * across) / Math.max(right - left, least), (size.height - 2 * up) / Math.max(bottom - top, least));
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2];
  return {
    project(place) {
      const [x, y] = mercator(place);
      return [size.width / 2 + (x - middleX) * scale + shift[0], size.height / 2 + (y - middleY) * scale + shift[1]];
    },
    metresPerPixel: unitM / scale,
    unitPerPixel: 1 / scale,
    corner: [middleX - (size.width / 2 + shift[0]) / scale, middleY - (size.height / 2 + shift[1]) / scale],
  };
}

/** The longest round length (1, 2 or 5 × 10ⁿ metres) of at most so many pixels. */
export function scaleBar(metresPerPixel: number, atMostPixels: number): { readonly metres: number; readonly pixels: number } {
  const longest = metresPerPixel * atMostPixels;
  const power = 10 ** Math.floor(Math.log10(longest));
  const metres = [5, 2, 1].map((step) => step * power).find((length) => length <= longest) ?? power;
  return { metres, pixels: metres / metresPerPixel };
}

/** Degrees between the lines of a graticule: about this many lines over the span. */
export function graticuleStep(spanDegrees: number, lines = 5): number {
  const rough = spanDegrees / lines;
  const power = 10 ** Math.floor(Math.log10(rough));
  return [1, 2, 5, 10].map((step) => step * power).find((step) => step >= rough)!;
}
