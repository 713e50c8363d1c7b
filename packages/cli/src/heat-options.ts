import {
  checkHeatRule,
  type Day,
  HEAT_CUTOFFS,
  HEAT_METHODS,
  type HeatRule,
  ok,
  type Problem,
  parseDay,
  type Result,
  refuse,
  type TemperatureUnit,
} from '@duskwatch/core';
import { optionProblem } from './outcome.ts';

export interface HeatOptions {
  readonly method: string;
  readonly cutoff?: string;
  readonly lower: string;
  readonly upper?: string;
}

const TEMPERATURE = /^([-+]?\d+(?:\.\d+)?)\s*°?([CF])$/i;

/** The heat rule that the options of a command line spell, its unit that of the thresholds. */
export function heatRuleFrom(options: HeatOptions): Result<HeatRule> {
  const problems: Problem[] = [];
  const method = oneOf('--method', options.method, HEAT_METHODS, problems);
  const cutoff = oneOf(
    '--cutoff',
    options.cutoff ?? (options.upper === undefined ? 'none' : 'horizontal'),
    HEAT_CUTOFFS,
    problems,
  );
  const lower = temperature('--lower', options.lower, problems);
  const upper = options.upper === undefined ? null : temperature('--upper', options.upper, problems);
  if (lower && upper && lower.unit !== upper.unit)
    problems.push(
      optionProblem(
        '--upper',
        `${options.upper} with --lower ${options.lower}`,
        'both thresholds in one unit',
        'Write both in °F or both in °C.',
      ),
    );
  if (problems.length > 0 || !method || !cutoff || !lower) return refuse(...problems);
  const rule = checkHeatRule({ method, cutoff, lower: lower.value, upper: upper?.value ?? null, unit: lower.unit });
  return rule.ok ? rule : refuse(...rule.problems.map(aboutOption));
}

/** The core names the part of the rule; a command line calls it by its option. */
const aboutOption = (problem: Problem): Problem => ({ ...problem, where: { parameter: `--${problem.where.column}` } });

/** The day an option names. */
export function dayOption(parameter: string, text: string): Result<Day> {
  const day = parseDay(text);
  return day === null
    ? refuse(optionProblem(parameter, text, 'a calendar day as YYYY-MM-DD', 'Write the day as, say, 2026-07-15.'))
    : ok(day);
}

function oneOf<W extends string>(parameter: string, word: string, words: readonly W[], problems: Problem[]): W | null {
  const found = words.find((each) => each === word);
  if (!found) problems.push(optionProblem(parameter, word, `one of ${words.join(', ')}`, 'Choose one of these.'));
  return found ?? null;
}

function temperature(parameter: string, text: string, problems: Problem[]): { value: number; unit: TemperatureUnit } | null {
  const match = TEMPERATURE.exec(text.trim());
  if (match) return { value: Number(match[1]), unit: match[2]!.toUpperCase() as TemperatureUnit };
  problems.push(optionProblem(parameter, text, 'a temperature with its unit, as 50F or 10C', 'Add F or C to the number.'));
  return null;
}
