/** For each catch in a field: when its eggs hatch, and when their larvae are small and large. */
import { caughtOutlook, larvaeModel } from '../advice/larvae-finding.ts';
import { type Prepared, trapsThisSeason, weatherSourceOf } from '../advice/prepare.ts';
import { heatAhead } from '../advice/weather-ahead.ts';
import { addDays, type Day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { CatchInterval } from '../catch/types.ts';
import { forecastEvent } from '../forecast/event-forecast.ts';
import type { LifeLine } from '../forecast/larvae.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { FieldRecord } from '../records/schema.ts';
import { datesView } from './dates.ts';
import type { LarvaeRow, LarvaeView, StageDays } from './flights-schema.ts';

const DAYS_AHEAD = 28;

/** By the traps of the design that caught most; null without a model, moths, or weather. */
export function larvaeView(prepared: Prepared, field: FieldRecord, insect: string): LarvaeView | null {
  const life = larvaeModel(insect);
  const source = weatherSourceOf(prepared, field);
  if (!life || source === null) return null;
  const caught = [...groupBy(trapsThisSeason(prepared, field, insect), ({ design }) => design).values()]
    .flatMap((traps) => caughtOutlook(prepared, field, traps, null, DAYS_AHEAD) ?? [])
    .sort((a, b) => b.outlook.moths - a.outlook.moths)[0];
  if (!caught) return null;
  const { model, outlook, intervals } = caught;
  const { track, measuredThrough } = heatAhead(prepared, source, model.heat);
  const date = (on: Day | null) => on && formatDay(on);
  const { ten, half, ninety } = outlook.hatch;
  return {
    modelName: model.name,
    source: model.source,
    standing: model.standing,
    design: intervals[0]!.design,
    measuredThrough: formatDay(measuredThrough!),
    hatch: { ten: date(ten), half: date(half), ninety: date(ninety) },
    worthGoing: outlook.worthGoingDates && datesView(outlook.worthGoingDates),
    days: outlook.days.map(({ on, amounts }) => ({
      on: formatDay(on),
      egg: amounts.egg / outlook.moths,
      small: (amounts['small-larva'] + amounts.larva) / outlook.moths,
      large: amounts['large-larva'] / outlook.moths,
    })),
    twoSizes: life.line.stages.some(({ stage }) => stage === 'large-larva'),
    rows: intervals
      .filter(({ count }) => count !== null && count > 0)
      .sort((a, b) => b.to - a.to || (a.trapId < b.trapId ? -1 : 1))
      .flatMap((interval) => larvaeRow(life.line, interval, track) ?? []),
  };
}

function larvaeRow(line: LifeLine, { trapId, from, to, count }: CatchInterval, track: HeatTrack): LarvaeRow | null {
  /** From the first offspring to come to `begins` to the last one to leave `ends`, in degree-days after laying. */
  const between = (begins: number, ends: number): StageDays | null => {
    const first = begins === 0 ? formatDay(from) : middleOf(track, addDays(from, 1), begins);
    return first === null ? null : { from: first, to: middleOf(track, to, ends + line.beforeLaying) };
  };
  const stageDays = (...names: readonly string[]): StageDays | null => {
    const stage = line.stages.find((one) => names.includes(one.stage));
    return stage ? between(stage.from, stage.to) : null;
  };
  const eggs = stageDays('egg');
  if (eggs === null) return null;
  const written = { trapId, from: formatDay(from), to: formatDay(to), moths: count! };
  return { ...written, eggs, smallLarvae: stageDays('small-larva', 'larva'), largeLarvae: stageDays('large-larva') };
}

/** Median day by which `heat` has come after the night before `start`. */
const middleOf = (track: HeatTrack, start: Day, heat: number) => datesView(forecastEvent(track, start, heat))?.middle ?? null;
