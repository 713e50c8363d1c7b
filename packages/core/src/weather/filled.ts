/** Days that a source lacks, from the source that a person named for its gaps. */
import { addDays, type Day } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { forecastsFromRecords, isKnown, seriesFromRecords } from './series.ts';
import type { DailyExtremes } from './types.ts';

type Series = ReadonlyMap<string, DailyExtremes>;
type Weather = Pick<Program, 'weather' | 'sources'>;

/** What was measured at each source, its gaps, and the days after its last, filled where another source is named for them. */
export const measuredWeather = ({ weather, sources }: Weather): Map<string, DailyExtremes> =>
  filledUp(seriesFromRecords(weather), sources);

/** The same of the days that somebody, or a service, forecast by `on`. */
export const forecastWeather = ({ weather, sources }: Weather, on: Day): Map<string, DailyExtremes> =>
  filledUp(forecastsFromRecords(weather, on), sources);

function filledUp(series: Series, sources: Program['sources']): Map<string, DailyExtremes> {
  const filled = new Map(series);
  for (const { sourceId, fillFrom } of sources) {
    // From what the filler itself has, never from what fills it.
    const filler = fillFrom === null ? undefined : series.get(fillFrom);
    if (filler === undefined || fillFrom === sourceId) continue;
    const own = series.get(sourceId);
    filled.set(sourceId, own === undefined ? allOf(sourceId, filler) : fill(own, filler));
  }
  return filled;
}

const allOf = (sourceId: string, filler: DailyExtremes): DailyExtremes => ({
  ...filler,
  sourceId,
  filled: new Uint8Array(filler.tminC.length).fill(1),
  filledFrom: filler.sourceId,
});

/** From the first day of the series to the last of either: what lies before the source began is not its gap. */
function fill(own: DailyExtremes, filler: DailyExtremes): DailyExtremes {
  const end = Math.max(own.start + own.tminC.length, filler.start + filler.tminC.length) - 1;
  const length = end - own.start + 1;
  const tminC = new Float64Array(length).fill(Number.NaN);
  const tmaxC = new Float64Array(length).fill(Number.NaN);
  const filled = new Uint8Array(length);
  tminC.set(own.tminC);
  tmaxC.set(own.tmaxC);
  for (let index = 0; index < length; index++) {
    if (isKnown(own, index)) continue;
    const there = addDays(own.start, index) - filler.start;
    if (!isKnown(filler, there)) continue;
    tminC[index] = filler.tminC[there]!;
    tmaxC[index] = filler.tmaxC[there]!;
    filled[index] = 1;
  }
  return { ...own, tminC, tmaxC, filled, filledFrom: filler.sourceId };
}
