/** From a program's records to catches that can be compared side by side: one site, exactly the same nights. */

import { type Day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { Program } from '../records/program.ts';
import { growingYear } from './growing-year.ts';
import type { SideBySideCatch } from './side-by-side.ts';
import { type TrapWithHistory, trapHistories } from './trap-histories.ts';

/** Lures are told apart by their stated life, since no more is recorded of them; traps compared are then of one design. */
export type Compared = 'design' | 'lure-life';

export interface SideBySideSet {
  readonly insect: string;
  readonly compared: Compared;
  readonly observations: readonly SideBySideCatch[];
  /** Trap-nights of traps that stood beside another treatment and yet could not be used, by reason. */
  readonly leftOut: Readonly<Record<NotComparable, number>>;
  /** Trap-nights used under a lure whose age or life nobody recorded. */
  readonly lureUnknown: number;
}

/**
 * `other-nights`: no other treatment at the site was visited at both ends of the same nights. `older`: beyond what is
 * fitted at once.
 */
export type NotComparable = 'no-information' | 'doubtful' | 'lure-spent' | 'lure-not-stated' | 'other-nights' | 'older';

/** More than thirty seasons of a site; beyond, a page would wait. Own choice. */
const MOST_CATCHES = 6_000;

/**
 * One set for each insect that traps of two treatments watched at one station or for one field, through `on`.
 *
 * A block begins on a day on which traps of two treatments were visited and ends on the next such day; the visits of a
 * trap in between add up. Visits that say nothing, doubtful ones and those under a spent lure are left out and end the
 * block. No night of a trap is used twice: blocks at a station are made before those of a field.
 */
export function sideBySideOf(
  program: Program,
  { on, compared = 'design' }: { readonly on: Day; readonly compared?: Compared },
): SideBySideSet[] {
  const byInsect = groupBy(trapHistories(program, on), ({ trap }) => trap.insect);
  return [...byInsect].flatMap(([insect, traps]) => {
    const sites = sitesOf(traps, compared).filter(({ traps }) => new Set(visitsOf(traps, compared).map(treatment)).size > 1);
    if (sites.length === 0) return [];
    const used = new Set<CatchInterval>();
    const blocks = sites.flatMap((site) => blocksOf(site, compared, used));
    const observations = newest(blocks, MOST_CATCHES);
    const kept = new Set(observations);
    const older = blocks.reduce((sum, one) => sum + (kept.has(one) ? 0 : one.nights), 0);
    const beside = [...new Set(sites.flatMap(({ traps }) => traps))].flatMap(({ history }) => history.intervals);
    const unknown = [...used].filter(({ lurePastLife }) => lurePastLife === null);
    return [
      {
        insect,
        compared,
        observations: observations.map(({ from, ...one }) => ({ ...one, season: growingYear(program, from).year })),
        leftOut: { ...leftOutOf(beside, used, compared), older },
        lureUnknown: nightsOf(unknown),
      },
    ];
  });
}

/** Whole blocks, as many of the newest as there is room for. */
function newest(observations: readonly DatedCatch[], most: number): DatedCatch[] {
  const blocks = [...groupBy(observations, ({ block }) => block).values()].sort((a, b) => b[0]!.from - a[0]!.from);
  let room = most;
  return blocks.flatMap((block) => {
    room -= block.length;
    return room < 0 ? [] : block;
  });
}

interface DatedCatch extends Omit<SideBySideCatch, 'season'> {
  readonly from: Day;
}

interface Site {
  readonly name: string;
  readonly traps: readonly TrapWithHistory[];
}

/** Stations, then fields. */
function sitesOf(traps: readonly TrapWithHistory[], compared: Compared): Site[] {
  const design = ({ trap }: TrapWithHistory) => (compared === 'lure-life' ? ` ${trap.design}` : '');
  const placed = [
    ...traps.map((one) => ({ name: `station ${one.trap.station}${design(one)}`, one })),
    ...traps.flatMap((one) => one.trap.informs.map((field) => ({ name: `field ${field}${design(one)}`, one }))),
  ];
  return [...groupBy(placed, ({ name }) => name)].map(([name, members]) => ({ name, traps: members.map(({ one }) => one) }));
}

interface Visit {
  readonly interval: CatchInterval;
  readonly place: string;
  readonly treatment: string;
}

const treatment = (visit: Visit) => visit.treatment;

/** Visits that can be compared at all. */
function visitsOf(traps: readonly TrapWithHistory[], compared: Compared): Visit[] {
  return traps.flatMap(({ trap, history }) =>
    history.intervals
      .filter((interval) => whyNot(interval, compared) === null)
      .map((interval) => ({
        interval,
        place: trap.station,
        treatment: compared === 'design' ? trap.design : `${interval.lureLifeDays}-day lure`,
      })),
  );
}

function whyNot(interval: CatchInterval, compared: Compared): NotComparable | null {
  if (interval.count === null) return 'no-information';
  if (interval.condition !== 'fit') return 'doubtful';
  if (interval.lurePastLife === true) return 'lure-spent';
  if (compared === 'lure-life' && interval.lureLifeDays === null) return 'lure-not-stated';
  return null;
}

function blocksOf({ name, traps }: Site, compared: Compared, used: Set<CatchInterval>): DatedCatch[] {
  const visits = visitsOf(traps, compared);
  const byTrap = [...groupBy(visits, ({ interval }) => interval.trapId).values()].map(
    (own) => new Map(own.map((visit) => [visit.interval.from, visit])),
  );
  const starts = [...new Set(visits.map(({ interval }) => interval.from))].sort((a, b) => a - b);
  return starts.flatMap((from) => {
    const stretch = sharedStretch(byTrap, from, used);
    if (stretch === null) return [];
    const { end, runs } = stretch;
    return runs.map((run): DatedCatch => {
      for (const { interval } of run) used.add(interval);
      const intervals = run.map(({ interval }) => interval);
      const count = intervals.reduce((sum, interval) => sum + interval.count!, 0);
      const { treatment, place } = run[0]!;
      const block = `${name}, ${formatDay(from)} to ${formatDay(end)}`;
      return { treatment, place, site: name, from, block, count, nights: nightsOf(intervals) };
    });
  });
}

/**
 * From a day on to the first day on which traps of two treatments were both visited: the visits of each such trap, one
 * after the other, of one treatment and not yet used. Null when all traps of all treatments but one break off before.
 */
function sharedStretch(
  byTrap: readonly ReadonlyMap<Day, Visit>[],
  from: Day,
  used: ReadonlySet<CatchInterval>,
): { readonly end: Day; readonly runs: readonly (readonly Visit[])[] } | null {
  const runs = byTrap.map((visits) => ({ visits, run: [] as Visit[], next: visits.get(from) }));
  for (;;) {
    for (const one of runs) {
      const changed = one.run[0] && one.next && one.run[0].treatment !== one.next.treatment;
      if (one.next && (changed || used.has(one.next.interval))) one.next = undefined;
    }
    const live = runs.filter(({ next }) => next !== undefined);
    if (new Set(live.map(({ next }) => next!.treatment)).size < 2) return null;
    const end = live.reduce((first, { next }) => Math.min(first, next!.interval.to), Number.POSITIVE_INFINITY) as Day;
    const visited = live.filter(({ next }) => next!.interval.to === end);
    for (const one of visited) {
      one.run.push(one.next!);
      one.next = one.visits.get(end);
    }
    if (new Set(visited.map(({ run }) => run[0]!.treatment)).size > 1) return { end, runs: visited.map(({ run }) => run) };
  }
}

function leftOutOf(intervals: readonly CatchInterval[], used: ReadonlySet<CatchInterval>, compared: Compared) {
  const nights = (reason: NotComparable | null) =>
    nightsOf(intervals.filter((interval) => !used.has(interval) && whyNot(interval, compared) === reason));
  return {
    'no-information': nights('no-information'),
    doubtful: nights('doubtful'),
    'lure-spent': nights('lure-spent'),
    'lure-not-stated': nights('lure-not-stated'),
    'other-nights': nights(null),
    older: 0,
  };
}

const nightsOf = (intervals: readonly CatchInterval[]): number => intervals.reduce((sum, { nights }) => sum + nights, 0);
