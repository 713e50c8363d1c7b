import { day, prepare, seasonToShow, seasonTruthView, seasonView } from '@duskwatch/core';
import { done, misused, type Outcome, optionProblem } from '../outcome.ts';
import { programOnDay, type ReadOptions, titleOf } from '../read-program.ts';
import { print } from '../terminal.ts';
import { rateLines } from '../written-season.ts';

export interface SeasonOptions extends ReadOptions {
  readonly year?: string;
}

export async function season(folder: string | undefined, options: SeasonOptions): Promise<Outcome> {
  const year = options.year === undefined ? null : Number(options.year);
  if (year !== null && !(Number.isInteger(year) && year >= 1900 && year <= 2200))
    return misused(
      optionProblem('--year', options.year!, 'a year from 1900 to 2200', 'Write the year in which the season begins.'),
    );
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const prepared = prepare(read.program, { on: day(read.on) });
  const shown = year ?? seasonToShow(prepared);
  const view = seasonView(prepared, shown, true);
  const truth = view.state === 'ahead' ? null : seasonTruthView(prepared, shown);
  print(
    options.json ? JSON.stringify({ plan: view, truth }, null, 2) : [titleOf(read), '', ...rateLines(view, truth)].join('\n'),
  );
  return done;
}
