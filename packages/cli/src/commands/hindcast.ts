import { catalogue, hindcast as hindcastEvents, skillOf, skillTables } from '@duskwatch/core';
import { done, faulty, type Outcome, optionProblem } from '../outcome.ts';
import { print } from '../terminal.ts';
import { readWeatherFile, type WeatherFileOptions } from '../weather-file.ts';

export interface HindcastCommandOptions extends WeatherFileOptions {
  readonly json?: boolean;
}

/** How far forecasts of every event in the catalogue would have been right in the past years of a weather file. */
export async function hindcast(file: string, options: HindcastCommandOptions): Promise<Outcome> {
  const read = await readWeatherFile(file, options);
  if (!read.ok) return faulty(...read.problems);
  const cases = hindcastEvents(read.value, catalogue.models);
  if (cases.length === 0)
    return faulty(
      optionProblem(
        'weather.csv',
        `${read.value.tminC.length} days in which no event of the catalogue came`,
        'a season or more',
        'Give a longer file.',
      ),
    );
  print(options.json ? JSON.stringify(skillOf(cases), null, 2) : skillTables([{ site: read.value.sourceId, cases }]));
  return done;
}
