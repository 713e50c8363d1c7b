/**
 * How catch falls as a lure ages, from lures of different ages in the same nights.
 *
 * Counts are negative binomial; the logarithm of the mean adds up trap, night and a straight line in lure age. Age can
 * be told from night only when lures were changed on different days, and from trap only when traps had lures changed.
 */

import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import {
  indicatorColumns,
  type NamedColumns,
  negativeBinomialRegression,
  studentLimit,
  withIntercept,
} from '../statistics/index.ts';
import { dependentColumn } from '../statistics/linear-algebra.ts';
import { LESSON_ASSUMPTIONS } from './assumptions.ts';
import { type Estimate, type Learned, notKnown } from './learned.ts';
import { spareBlocks } from './linked.ts';

export interface AgedLureCatch {
  readonly trap: string;
  /** The nights the catch is from, shared by traps under the same flight. */
  readonly block: string;
  /** Days since the lure was changed, at the middle of those nights. */
  readonly lureAgeDays: number;
  readonly count: number;
  readonly nights: number;
}

export interface LureDecay {
  /** Change of ln(catch) per day of lure age: below 0, the lure weakens. */
  readonly perDay: Estimate;
  /** Days in which catch halves; the interval is open (∞) where the lure may not weaken at all. */
  readonly halfLifeDays: Estimate;
  /** Whether even the near end of the interval shows weakening. */
  readonly weakens: boolean;
  readonly k: number;
  readonly observations: number;
  readonly oldestDays: number;
}

/**
 * `changed-together`: on each night all lures were of one age. `never-changed`: each trap kept one lure, so its age is
 * fixed by trap and night.
 */
export type NoDecay = 'changed-together' | 'never-changed' | 'too-few-observations' | 'no-fit';

export function lureDecay(
  observations: readonly AgedLureCatch[],
  { level = ASSUMPTIONS.intervalLevel.value }: { readonly level?: number } = {},
): Learned<LureDecay, NoDecay> {
  const rows = informativeRows(observations);
  const columns = withIntercept(
    rows.length,
    indicatorColumns(
      'trap',
      rows.map(({ trap }) => trap),
    ),
    nightColumns(rows),
    { names: ['lure age'], X: [Float64Array.from(rows, ({ lureAgeDays }) => lureAgeDays)] },
  );
  const together = !rows.some((row) => rows.some((other) => other.block === row.block && other.lureAgeDays !== row.lureAgeDays));
  if (rows.length > 0 && together)
    return notKnown(
      'changed-together',
      'lures of one age on each night',
      'lures of different ages in the same nights',
      'Change the lures of half the traps in one week and of the others in the next.',
    );
  const spare = rows.length - columns.X.length;
  const least = LESSON_ASSUMPTIONS.spareObservations.value;
  if (spare < least)
    return notKnown(
      'too-few-observations',
      `${rows.length} catches for ${columns.X.length} effects of trap, night and age`,
      `${columns.X.length + least} or more`,
      'Go on with staggered lure changes: more traps in the same nights tell more than more nights.',
      { figures: { have: rows.length, need: columns.X.length + least } },
    );
  const dependent = dependentColumn(columns.X);
  if (dependent !== null && columns.names[dependent.column] === 'lure age')
    return notKnown(
      'never-changed',
      'ages fixed by trap and night',
      'traps whose lure was changed while others kept theirs',
      'Change lures within the season, in different weeks for different traps.',
    );
  const fit = negativeBinomialRegression({
    ...columns,
    y: rows.map(({ count }) => count),
    offset: rows.map(({ nights }) => Math.log(nights)),
    dispersion: 'adjusted',
  });
  if (!fit.ok) return { known: false, reason: 'no-fit', problem: fit.problems[0]!, figures: null };

  const { estimate, standardError } = fit.value.coefficients.at(-1)!;
  const margin = studentLimit(level, spare) * standardError;
  const perDay = { value: estimate, low: estimate - margin, high: estimate + margin, level };
  return {
    known: true,
    perDay,
    halfLifeDays: { value: halfLife(estimate), low: halfLife(perDay.low), high: halfLife(perDay.high), level },
    weakens: perDay.high < 0,
    k: fit.value.k,
    observations: rows.length,
    oldestDays: rows.reduce((oldest, { lureAgeDays }) => Math.max(oldest, lureAgeDays), 0),
  };
}

function nightColumns(rows: readonly AgedLureCatch[]): NamedColumns {
  const spare = new Set([...spareBlocks(rows)].map((block) => `nights ${block}`));
  const { names, X } = indicatorColumns(
    'nights',
    rows.map(({ block }) => block),
  );
  const kept = (_: unknown, j: number) => !spare.has(names[j]!);
  return { names: names.filter(kept), X: X.filter(kept) };
}

/** Catch at a lure age as a share of what a fresh lure would catch. */
export function shareLeft({ perDay }: LureDecay, ageDays: number): Estimate {
  const at = (rate: number) => Math.exp(rate * ageDays);
  return { value: at(perDay.value), low: at(perDay.low), high: at(perDay.high), level: perDay.level };
}

const halfLife = (perDay: number) => (perDay < 0 ? Math.LN2 / -perDay : Infinity);

/** Without nights that only one trap saw or nothing was caught in, and without traps that caught nothing. */
function informativeRows(observations: readonly AgedLureCatch[]): readonly AgedLureCatch[] {
  const caughtIn = (key: 'trap' | 'block') => groupBy(observations, (row) => row[key]);
  const [byTrap, byBlock] = [caughtIn('trap'), caughtIn('block')];
  const some = (rows: readonly AgedLureCatch[]) => rows.some(({ count }) => count > 0);
  const kept = observations.filter(({ trap, block }) => {
    const night = byBlock.get(block)!;
    return some(byTrap.get(trap)!) && some(night) && night.some((row) => row.trap !== trap);
  });
  return kept.length === observations.length ? kept : informativeRows(kept);
}
