/**
 * Heat by numerical integration of the temperature curve itself: the reference that the closed forms are held against.
 * Knows the definitions of curve and cutoff, and none of the formulas.
 */
import { celsius } from '../base/temperature.ts';
import type { HeatCutoff, HeatRule } from './types.ts';

/**
 * Temperature above a threshold at a share 0..1 of the way from one extreme to the next. The difference is taken first,
 * and each half counted from its own end, so that no digits are lost where curve and threshold touch.
 */
type Leg = (share: number, threshold: number) => number;

/** 1 − cos πx = 2·sin² (πx/2). */
const sineLeg =
  (from: number, to: number): Leg =>
  (share, threshold) =>
    share < 0.5
      ? from - threshold + (to - from) * Math.sin((Math.PI * share) / 2) ** 2
      : to - threshold - (to - from) * Math.cos((Math.PI * share) / 2) ** 2;

const triangleLeg =
  (from: number, to: number): Leg =>
  (share, threshold) =>
    share < 0.5 ? from - threshold + (to - from) * share : to - threshold - (to - from) * (1 - share);

/** What one moment adds, `above(T)` degrees above T; the day's sum is the mean over the day, and never below 0. */
function rateAt(above: (threshold: number) => number, lower: number, upper: number | null, cutoff: HeatCutoff): number {
  const heat = Math.max(0, above(lower));
  if (upper === null || cutoff === 'none') return heat;
  if (cutoff === 'horizontal') return Math.min(heat, upper - lower);
  if (cutoff === 'intermediate') return heat - 2 * Math.max(0, above(upper));
  return above(upper) <= 0 ? heat : 0;
}

/** Degree-days in °C·d by quadrature, for the sine and triangle methods. */
export function degreeDaysByQuadrature(rule: HeatRule, tminC: number, tmaxC: number, nextTminC: number): number {
  const leg = rule.method.endsWith('sine') ? sineLeg : triangleLeg;
  const fallsTo = rule.method.startsWith('double') ? nextTminC : tminC;
  const lower = celsius(rule.lower, rule.unit);
  const upper = rule.upper === null ? null : celsius(rule.upper, rule.unit);
  const integral = (curve: Leg): number => integrate(curve, lower, upper, rule.cutoff);
  return Math.max(0, (integral(leg(tminC, tmaxC)) + integral(leg(tmaxC, fallsTo))) / 2);
}

/** A leg is monotone, so it meets each threshold once at most; between those points the integrand is smooth. */
function integrate(curve: Leg, lower: number, upper: number | null, cutoff: HeatCutoff): number {
  const cuts = [lower, upper].flatMap((threshold) => (threshold === null ? [] : meets(curve, threshold)));
  const points = [0, ...cuts.sort((a, b) => a - b), 1];
  let sum = 0;
  for (let i = 0; i + 1 < points.length; i++)
    sum += gaussLegendre(
      (share) => rateAt((threshold) => curve(share, threshold), lower, upper, cutoff),
      points[i]!,
      points[i + 1]!,
    );
  return sum;
}

/** Where a monotone leg crosses the threshold, by bisection to the last bit. */
function meets(curve: Leg, threshold: number): number[] {
  const warm = (share: number): boolean => curve(share, threshold) > 0;
  if (warm(0) === warm(1)) return [];
  let [low, high] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (warm(middle) === warm(1)) high = middle;
    else low = middle;
  }
  return [(low + high) / 2];
}

/** Nodes and weights of the 20-point rule on [−1, 1], by Newton's method on the Legendre polynomial. */
const NODES = legendreNodes(20);

function gaussLegendre(f: (x: number) => number, from: number, to: number): number {
  const [centre, half] = [(from + to) / 2, (to - from) / 2];
  return half * NODES.reduce((sum, { x, weight }) => sum + weight * f(centre + half * x), 0);
}

function legendreNodes(n: number): { x: number; weight: number }[] {
  return Array.from({ length: n }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    for (let step = 0; step < 50; step++) {
      let [previous, value] = [1, x];
      for (let k = 2; k <= n; k++) [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k];
      slope = (n * (x * value - previous)) / (x * x - 1);
      x -= value / slope;
    }
    return { x, weight: 2 / ((1 - x * x) * slope * slope) };
  });
}
