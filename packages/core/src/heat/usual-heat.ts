/** The heat to come where years at the source are too few: by the normals of its months, and by how far this season runs from them. */
import { addDays, type Day } from '../base/day.ts';
import { degreeDaysIn } from '../base/temperature.ts';
import { studentLimit } from '../statistics/student.ts';
import { type MonthlyNormals, normalsOn } from '../weather/normals.ts';
import { degreeDays } from './daily.ts';
import type { HeatRule, HeatTrack } from './types.ts';
import { type WaitWindow, wholeDays } from './wait-window.ts';

/**
 * How days run from the normals, as two parts that add up: spells of some days, and months and years that are warm or cool
 * as a whole (and normals that are of another place or time). Both are autoregressive. Chosen on Seattle and New York
 * 2012–2015 and three invented climates: see docs/forecast-skill.md.
 */
const SPELL = { sdC: 3.1, fromDayBefore: 0.63 };
const LASTING = { sdC: 1.3, fromDayBefore: 0.985 };
/** Heat of a day that no shift of its mean explains, in °C·d. */
const NOISE_C = 0.5;
/** Degrees of freedom by which the scatter above counts beside what the days seen show. */
const ASSUMED_FREEDOM = 30;
/** Days seen count up to so many. */
const MOST_FREEDOM = 200;
/** Days before the last known one that tell how this season runs. */
const SEEN_DAYS = 120;
const PROJECTION_MOST_DAYS = 400;

/** Three points that give the mean of a smooth function of a normal variate (Gauss–Hermite). */
const NODES = [
  { at: -Math.sqrt(3), weight: 1 / 6 },
  { at: 0, weight: 2 / 3 },
  { at: Math.sqrt(3), weight: 1 / 6 },
] as const;
const SHIFT_C = 0.5;

/** A day's heat by the normals, and what one °C more of its mean adds to it; both in the unit of the rule. */
interface UsualDay {
  readonly heat: number;
  readonly slope: number;
}

const DAY_SD_C = Math.hypot(SPELL.sdC, LASTING.sdC);

/** Usual heat of any day under a rule, each date worked out once. */
export function usualHeat(rule: HeatRule, normals: MonthlyNormals): (on: Day) => UsualDay {
  const known = new Map<Day, UsualDay>();
  const heatAt = (tminC: number, tmaxC: number, nextTminC: number) =>
    NODES.reduce((sum, { at, weight }) => {
      const shift = at * DAY_SD_C;
      return sum + weight * degreeDaysIn(degreeDays(rule, tminC + shift, tmaxC + shift, nextTminC + shift), rule.unit);
    }, 0);
  return (on) => {
    const held = known.get(on);
    if (held) return held;
    const { tminC, tmaxC } = normalsOn(normals, on);
    const next = normalsOn(normals, addDays(on, 1)).tminC;
    const heat = heatAt(tminC, tmaxC, next);
    const up = heatAt(tminC + SHIFT_C, tmaxC + SHIFT_C, next + SHIFT_C);
    const down = heatAt(tminC - SHIFT_C, tmaxC - SHIFT_C, next - SHIFT_C);
    const day = { heat, slope: (up - down) / (2 * SHIFT_C) };
    known.set(on, day);
    return day;
  };
}

/** Mean and covariance of the lasting and the spell part. */
interface State {
  readonly lasting: number;
  readonly spell: number;
  readonly ll: number;
  readonly ls: number;
  readonly ss: number;
}

const START: State = { lasting: 0, spell: 0, ll: LASTING.sdC ** 2, ls: 0, ss: SPELL.sdC ** 2 };

function nextDay({ lasting, spell, ll, ls, ss }: State): State {
  const [a, b] = [LASTING.fromDayBefore, SPELL.fromDayBefore];
  return {
    lasting: a * lasting,
    spell: b * spell,
    ll: a * a * ll + (1 - a * a) * LASTING.sdC ** 2,
    ls: a * b * ls,
    ss: b * b * ss + (1 - b * b) * SPELL.sdC ** 2,
  };
}

/** The parts as the days up to `end` show them (a Kalman filter), and how much more or less those scatter than assumed. */
function seen(track: HeatTrack, usual: (on: Day) => UsualDay, end: Day, noise: number) {
  let state = START;
  let [squares, n] = [0, 0];
  for (let on = Math.max(track.start, end - SEEN_DAYS + 1); on <= end; on++) {
    state = nextDay(state);
    const heat = track.daily[on - track.start]!;
    const { heat: expected, slope } = usual(on as Day);
    if (Number.isNaN(heat) || slope <= 0) continue;
    const { ll, ls, ss, lasting, spell } = state;
    const [gl, gs] = [slope * (ll + ls), slope * (ls + ss)];
    const variance = slope * (gl + gs) + noise ** 2;
    const off = heat - expected - slope * (lasting + spell);
    state = {
      lasting: lasting + (gl * off) / variance,
      spell: spell + (gs * off) / variance,
      ll: ll - (gl * gl) / variance,
      ls: ls - (gl * gs) / variance,
      ss: ss - (gs * gs) / variance,
    };
    // A day too cold for any heat tells little of the scatter.
    const telling = (slope * slope * DAY_SD_C ** 2) / (slope * slope * DAY_SD_C ** 2 + noise ** 2);
    squares += (telling * off * off) / variance;
    n += telling;
  }
  const freedom = ASSUMED_FREEDOM + Math.min(n, MOST_FREEDOM);
  const scale = (ASSUMED_FREEDOM + (n === 0 ? 0 : (squares * Math.min(n, MOST_FREEDOM)) / n)) / freedom;
  return { state, scale, freedom };
}

/**
 * Waits after `end` until `remaining` more has come (unit of the rule), in days and parts of one: the usual heat of the
 * days ahead, with the parts of the season carried on and fading, and the variance of their sum. Infinity where a limit
 * does not come within a year.
 */
export function usualWaits(track: HeatTrack, end: Day, remaining: number, normals: MonthlyNormals): WaitWindow {
  const usual = usualHeat(track.rule, normals);
  const noise = degreeDaysIn(NOISE_C, track.rule.unit);
  const { state: from, scale, freedom } = seen(track, usual, end, noise);
  const limit = studentLimit(0.8, freedom);
  const crossing = { early: Number.POSITIVE_INFINITY, middle: Number.POSITIVE_INFINITY, late: Number.POSITIVE_INFINITY };
  const before = { early: 0, middle: 0, late: 0 };
  let state = from;
  // Of the sum so far: its mean, variance, and covariance with both parts.
  let [mean, variance, withLasting, withSpell] = [0, 0, 0, 0];
  for (let n = 1; n <= PROJECTION_MOST_DAYS; n++) {
    state = nextDay(state);
    withLasting *= LASTING.fromDayBefore;
    withSpell *= SPELL.fromDayBefore;
    const { heat, slope } = usual(addDays(end, n));
    mean += Math.max(0, heat + slope * (state.lasting + state.spell));
    const ofDay = slope * slope * (state.ll + 2 * state.ls + state.ss) + noise ** 2;
    variance += ofDay + 2 * slope * (withLasting + withSpell);
    withLasting += slope * (state.ll + state.ls);
    withSpell += slope * (state.ls + state.ss);
    const reach = limit * Math.sqrt(scale * variance);
    for (const [which, sum] of [
      ['early', mean + reach],
      ['middle', mean],
      ['late', mean - reach],
    ] as const) {
      if (crossing[which] === Number.POSITIVE_INFINITY && sum >= remaining) {
        const step = sum - before[which];
        crossing[which] = n - 1 + (step > 0 ? Math.min(1, Math.max(0, (remaining - before[which]) / step)) : 1);
      }
      before[which] = sum;
    }
    if (crossing.late < Number.POSITIVE_INFINITY) break;
  }
  return wholeDays(crossing.early, crossing.middle, crossing.late);
}
