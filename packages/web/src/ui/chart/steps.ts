/** Season points as shapes: the rate holds over the nights it was measured on, and a gap stays a gap. */
import { day, type RatePoint } from '@duskwatch/core';
import { area, curveStepAfter, line } from 'd3-shape';

export interface StepVertex {
  /** Day number. */
  readonly at: number;
  readonly perNight: number;
  readonly low: number;
  readonly high: number;
}

/** Corners of the step line; null between two corners lifts the pen. */
export function stepVertices(points: readonly RatePoint[]): (StepVertex | null)[] {
  const vertices: (StepVertex | null)[] = [];
  let open: StepVertex | null = null;
  let until = Number.NEGATIVE_INFINITY;
  const close = () => {
    if (open) vertices.push({ ...open, at: until }, null);
    open = null;
  };
  for (const point of points) {
    const from = day(point.from);
    if (point.perNight === null || from > until) close();
    if (point.perNight === null) continue;
    open = { at: from, perNight: point.perNight, low: point.low ?? point.perNight, high: point.high ?? point.perNight };
    vertices.push(open);
    until = day(point.to);
  }
  close();
  return vertices;
}

type Scale = (value: number) => number;

export function stepPath(vertices: readonly (StepVertex | null)[], x: Scale, y: Scale): string {
  return (
    line<StepVertex | null>()
      .defined((v) => v !== null)
      .x((v) => x(v!.at))
      .y((v) => y(v!.perNight))
      .curve(curveStepAfter)
      .digits(1)(vertices as (StepVertex | null)[]) ?? ''
  );
}

export function bandPath(vertices: readonly (StepVertex | null)[], x: Scale, y: Scale): string {
  return (
    area<StepVertex | null>()
      .defined((v) => v !== null)
      .x((v) => x(v!.at))
      .y0((v) => y(v!.low))
      .y1((v) => y(v!.high))
      .curve(curveStepAfter)
      .digits(1)(vertices as (StepVertex | null)[]) ?? ''
  );
}
