import { day, type IsoDay } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';

/** The time axis that every strip of a field shares. A day's column begins at `x(day)` and ends at `x(day + 1)`. */
export interface Frame {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly from: number;
  readonly to: number;
  readonly x: (at: number) => number;
  readonly dayAt: (pixel: number) => number;
}

export function frame(from: IsoDay, to: IsoDay, width: number): Frame {
  const [first, last] = [day(from), day(to)];
  const left = 40;
  const right = Math.max(left + 1, width - 10);
  const x = scaleLinear()
    .domain([first, last + 1])
    .range([left, right]);
  const dayAt = (pixel: number) => Math.min(last, Math.max(first, Math.floor(x.invert(pixel))));
  return { width, left, right, from: first, to: last, x, dayAt };
}
