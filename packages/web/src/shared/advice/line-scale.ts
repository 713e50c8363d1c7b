/** What the week's small lines share, so that they can be compared: the season across, and the rule's height upward. */
import { day, type RateLine, type WeekView } from '@duskwatch/core';
import { monthTicks } from '../../ui/chart/axis.ts';

export const WIDTH = 240;
export const HEIGHT = 30;
/** Where every rule's threshold lies, from the top. */
const RULE_AT = 11;
const GROUND = HEIGHT - 1;
/** Tenfolds above the rule that the room over it holds. */
const TENFOLDS = 2;

export interface LineScale {
  readonly x: (at: number) => number;
  readonly y: (perNight: number) => number;
  /** The line at zero with a tick on the first of each month, as a path. */
  readonly ground: string;
}

/**
 * Height of a rate beside its rule: below it by the square root, so that weak nights show; above it each tenfold takes the
 * same step. The rule is at one height whatever its figure, so that above and below are read without a scale.
 */
export function besideRule(perNight: number, threshold: number): number {
  const share = perNight / threshold;
  if (share <= 1) return GROUND - (GROUND - RULE_AT) * Math.sqrt(share);
  return Math.max(1, RULE_AT - (RULE_AT - 1) * (Math.log10(share) / TENFOLDS));
}

/** Height of a rate without a rule: by the square root, up to the most that was caught by its design. */
const withoutRule = (perNight: number, most: number): number =>
  GROUND - (GROUND - RULE_AT) * Math.sqrt(Math.min(1, perNight / (most || 1)));

export const RULE_Y = RULE_AT;

/** One season across all lines; where no rule is known, one scale for each insect and design, for designs do not catch alike. */
export function lineScales(view: WeekView): (insect: number, line: RateLine) => LineScale {
  const most = new Map<string, number>();
  let first = view.on;
  for (const field of view.fields)
    field.cells.forEach(({ line }, insect) => {
      if (!line) return;
      if (line.from < first) first = line.from;
      const key = `${insect}|${line.design}`;
      for (const { perNight } of line.points) if (perNight !== null && perNight > (most.get(key) ?? 0)) most.set(key, perNight);
    });
  const to = day(view.on);
  const from = Math.min(day(first), to - 1);
  const x = (at: number) => ((at - from) / (to - from)) * WIDTH;
  const months = monthTicks(from, to).map(({ at }) => `M${x(at).toFixed(1)},${HEIGHT - 4}v3`);
  // One path for all of a page's lines: hundreds of fields are too many for an element to each month.
  const ground = `M0,${HEIGHT - 0.5}H${WIDTH}${months.join('')}`;
  return (insect, { design, thresholdPerNight }) => ({
    x,
    y:
      thresholdPerNight !== null && thresholdPerNight > 0
        ? (perNight) => besideRule(perNight, thresholdPerNight)
        : (perNight) => withoutRule(perNight, most.get(`${insect}|${design}`) ?? 0),
    ground,
  });
}
