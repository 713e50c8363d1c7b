/** Years against one another, ready to draw. */

import { formatDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { type YearsOptions, yearsAgainst } from './year-against-year.ts';
import type { YearsView } from './years-schema.ts';

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
