import { addDays, type DailyExtremes, type Day, sumHeat } from '@duskwatch/core';
import { alignColumns } from '../columns.ts';
import { dayOption, type HeatOptions, heatRuleFrom } from '../heat-options.ts';
import { done, faulty, misused, type Outcome, optionProblem } from '../outcome.ts';
import { note, print } from '../terminal.ts';
import { readWeatherFile, type WeatherFileOptions } from '../weather-file.ts';

export interface HeatCommandOptions extends HeatOptions, WeatherFileOptions {
  readonly from?: string;
  readonly to?: string;
  readonly bridge?: string;
  readonly json?: boolean;
}

export async function heat(file: string, options: HeatCommandOptions): Promise<Outcome> {
  const rule = heatRuleFrom(options);
  const from = options.from === undefined ? null : dayOption('--from', options.from);
  const to = options.to === undefined ? null : dayOption('--to', options.to);
  const bridge = options.bridge === undefined ? null : wholeDays('--bridge', options.bridge);
  const wrong = [rule, from, to, bridge].flatMap((result) => (result && !result.ok ? result.problems : []));
  if (!rule.ok || wrong.length > 0) return misused(...wrong);

  const read = await readWeatherFile(file, options);
  if (!read.ok) return faulty(...read.problems);
  const series = read.value;
  const sum = sumHeat(
    rule.value,
    series,
    from?.ok ? from.value : series.start,
    to?.ok ? to.value : lastDay(series),
    bridge?.ok ? { maxBridgeDays: bridge.value } : {},
  );
  if (!sum.ok) return faulty(...sum.problems.map((problem) => ({ ...problem, where: { file, ...problem.where } })));

  const { rows, unit, bridgedDays, bridgeMethod } = sum.value;
  if (options.json) {
    print(
      JSON.stringify(
        rows.map(({ bridged, ...row }) => (bridged ? { ...row, bridged } : row)),
        null,
        2,
      ),
    );
  } else {
    const header = ['date', `°${unit}·d`, 'total', ''];
    print(
      alignColumns([
        header,
        ...rows.map((row) => [row.date, row.degreeDays.toFixed(2), row.total.toFixed(2), row.bridged ? 'bridged' : '']),
      ]).join('\n'),
    );
  }
  if (bridgedDays > 0) note(`${bridgedDays} missing ${bridgedDays === 1 ? 'day' : 'days'} bridged (${bridgeMethod}).`);
  return done;
}

const lastDay = (series: DailyExtremes): Day => addDays(series.start, series.tminC.length - 1);

function wholeDays(parameter: string, text: string) {
  const days = Number(text);
  return Number.isInteger(days) && days >= 0 && text.trim() !== ''
    ? { ok: true as const, value: days }
    : { ok: false as const, problems: [optionProblem(parameter, text, 'a whole number of days', 'Give 0 or more.')] };
}
