/** Years against one another, ready to draw. */

import { type Day, formatDay, type IsoDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { TrapDesign } from '../records/schema.ts';
import { type YearPoint, type YearsAgainst, type YearsOptions, yearsAgainst } from './year-against-year.ts';

type Dated<T> = { readonly [K in keyof T]: T[K] extends Day ? IsoDay : T[K] };

export interface YearLine {
  readonly year: number;
  /** Not over on the day the years are read on: what follows is missing. */
  readonly open: boolean;
  readonly design: TrapDesign;
  readonly traps: number;
  readonly stations: readonly string[];
  readonly points: readonly Dated<YearPoint>[];
}

export interface YearsView extends Omit<YearsAgainst, 'curves' | 'farm'> {
  /** Oldest season first. */
  readonly lines: readonly YearLine[];
}

export function yearsView(program: Program, options: YearsOptions): YearsView {
  const { curves, farm: _, ...years } = yearsAgainst(program, options);
  return {
    ...years,
    lines: curves.map(({ season, design, traps, stations, points }) => ({
      year: season.year,
      open: season.to > options.on,
      design,
      traps,
      stations,
      points: points.map((point) => ({
        ...point,
        from: formatDay(point.from),
        to: formatDay(point.to),
        drawnFrom: formatDay(point.drawnFrom),
        drawnTo: formatDay(point.drawnTo),
      })),
    })),
  };
}
