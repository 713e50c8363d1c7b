/** The days of a table of weather, whatever its columns: enough to say what the file is and how long it runs. */
import type { IsoDay } from '@duskwatch/core';
import type { Grid } from './grid.ts';
import { daysDown } from './layout/days-down.ts';
import { GridView } from './layout/view.ts';
import { dayMeant, ordersOf, serialDay, writtenDay } from './words/written-day.ts';

export function weatherDays(grid: Grid): IsoDay[] {
  const view = new GridView(grid);
  for (let row = 0; row < view.height; row++) {
    const down = daysDown(view, row, view.height);
    if (down === null) continue;
    const cells = grid.rows
      .slice(row)
      .map((cells) => cells[down.column])
      .filter((cell) => cell !== undefined && cell.text !== '');
    const written = cells.flatMap((cell) => writtenDay(cell!) ?? []);
    const order =
      (['mdy', 'dmy'] as const).find((each) => written.every((day) => day.is !== 'numeric' || ordersOf(day).includes(each))) ??
      'mdy';
    return cells.flatMap((cell) => {
      const day = writtenDay(cell!);
      const meant = day === null ? serialDay(cell!) : dayMeant(day, { order, year: null, shift: 0 });
      return meant ?? [];
    });
  }
  return [];
}
