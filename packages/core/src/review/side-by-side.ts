/**
 * Trap designs or lures compared in the same nights.
 *
 * Counts are negative binomial; the logarithm of the mean adds up the treatment, the block (one site in one night or
 * stretch of nights) and, where treatments changed places, the place. What a night or place does to all traps alike
 * thereby cancels, and the ratio of treatments is left. In seeded simulations with few traps the interval of 80 % holds
 * the truth in 75 to 85 % (`bench/learn/coverage.mjs`).
 */

import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import {
  indicatorColumns,
  type NamedColumns,
  type NegativeBinomialRegression,
  negativeBinomialRegression,
  studentLimit,
  withIntercept,
} from '../statistics/index.ts';
import { dependentColumn } from '../statistics/linear-algebra.ts';
import { LEARN_ASSUMPTIONS } from './assumptions.ts';
import { type Estimate, type Learned, type NotKnown, notKnown } from './learned.ts';

export interface SideBySideCatch {
  /** What is compared: a trap design, or a lure. */
  readonly treatment: string;
  /** Shared by the traps compared: one site and the same nights. */
  readonly block: string;
  /** The post the trap stood at; null when not recorded. */
  readonly place: string | null;
  readonly count: number;
  readonly nights: number;
}

export interface TreatmentRatio {
  readonly treatment: string;
  readonly against: string;
  /** Catch of `treatment` over catch of `against`. */
  readonly ratio: Estimate;
  /** Blocks in which both stood. */
  readonly sharedBlocks: number;
  /** Shared blocks that would bring both ends of the interval within `usefulFactor` of the ratio. */
  readonly blocksForUsefulRatio: number;
}

export interface SideBySide {
  /** Every two treatments that shared blocks, in the order they appear. */
  readonly ratios: readonly TreatmentRatio[];
  /** ∞: counts scatter no more than chance about what treatment and night explain. */
  readonly k: number;
  /** Blocks left out because they say nothing: only one treatment stood there, or nothing was caught. */
  readonly leftOut: { readonly alone: number; readonly empty: number };
  /**
   * `always-same-place`: each treatment kept its post, so a ratio may be that of the posts. `place-unknown`: posts were
   * not recorded, so nobody can tell.
   */
  readonly cautions: readonly ('always-same-place' | 'place-unknown')[];
}

export type NoComparison = 'one-treatment' | 'too-few-shared-nights' | 'too-few-moths' | 'not-connected' | 'no-fit';

export function compareSideBySide(
  observations: readonly SideBySideCatch[],
  { level = ASSUMPTIONS.intervalLevel.value }: { readonly level?: number } = {},
): Learned<SideBySide, NoComparison> {
  const { rows, leftOut } = informativeBlocks(observations);
  const treatments = distinct(rows.map(({ treatment }) => treatment));
  const tooFew = refusal(observations, rows, treatments);
  if (tooFew) return tooFew;

  const { columns, cautions } = designOf(rows);
  const dependent = dependentColumn(columns.X);
  if (dependent !== null) return notConnected(columns.names[dependent.column]!);
  const fit = negativeBinomialRegression({
    ...columns,
    y: rows.map(({ count }) => count),
    offset: rows.map(({ nights }) => Math.log(nights)),
    dispersion: 'adjusted',
  });
  if (!fit.ok) return { known: false, reason: 'no-fit', problem: fit.problems[0]!, figures: null };

  const limit = studentLimit(level, rows.length - columns.X.length);
  const ratios = pairsOf(treatments).flatMap(([against, treatment]) => {
    const sharedBlocks = shared(rows, treatment, against);
    if (sharedBlocks === 0) return [];
    const { difference, standardError } = contrast(fit.value, treatment, against);
    return [
      {
        treatment,
        against,
        ratio: {
          value: Math.exp(difference),
          low: Math.exp(difference - limit * standardError),
          high: Math.exp(difference + limit * standardError),
          level,
        },
        sharedBlocks,
        blocksForUsefulRatio: Math.ceil(
          sharedBlocks * ((limit * standardError) / Math.log(LEARN_ASSUMPTIONS.usefulFactor.value)) ** 2,
        ),
      },
    ];
  });
  return { known: true, ratios, k: fit.value.k, leftOut, cautions };
}

function informativeBlocks(observations: readonly SideBySideCatch[]) {
  const leftOut = { alone: 0, empty: 0 };
  const rows = [...groupBy(observations, ({ block }) => block).values()].flatMap((block) => {
    const alone = distinct(block.map(({ treatment }) => treatment)).length < 2;
    const empty = block.every(({ count }) => count === 0);
    if (alone) leftOut.alone++;
    else if (empty) leftOut.empty++;
    return alone || empty ? [] : block;
  });
  return { rows, leftOut };
}

function refusal(
  observations: readonly SideBySideCatch[],
  rows: readonly SideBySideCatch[],
  treatments: readonly string[],
): NotKnown<NoComparison> | null {
  const given = distinct(observations.map(({ treatment }) => treatment));
  if (given.length < 2)
    return notKnown(
      'one-treatment',
      given[0] ?? 'nothing',
      'two treatments',
      'Set another trap or lure beside it, in the same nights.',
    );
  const least = LEARN_ASSUMPTIONS.sharedBlocks.value;
  const blocks = distinct(rows.map(({ block }) => block)).length;
  if (blocks < least)
    return notKnown(
      'too-few-shared-nights',
      `${blocks} blocks with two treatments and some catch`,
      `${least} or more`,
      `Keep them side by side for at least ${least - blocks} more checks that catch something.`,
      { figures: { have: blocks, need: least } },
    );
  const moths = LEARN_ASSUMPTIONS.mothsPerTreatment.value;
  for (const treatment of treatments) {
    const caught = rows.reduce((sum, row) => sum + (row.treatment === treatment ? row.count : 0), 0);
    if (caught < moths)
      return notKnown(
        'too-few-moths',
        `${caught} in ${treatment}`,
        `${moths} or more in each treatment`,
        'Go on comparing until each has caught enough, at the height of a flight.',
        { figures: { have: caught, need: moths } },
      );
  }
  return null;
}

const notConnected = (column: string) =>
  notKnown(
    'not-connected',
    column,
    'treatments linked by shared nights',
    'Set each treatment beside another at least now and then.',
  );

/** Blocks, then places where treatments moved between them, then treatments. */
function designOf(rows: readonly SideBySideCatch[]): { columns: NamedColumns; cautions: SideBySide['cautions'] } {
  const blocks = indicatorColumns(
    'block',
    rows.map(({ block }) => block),
  );
  const treatments = indicatorColumns(
    'treatment',
    rows.map(({ treatment }) => treatment),
  );
  const plain = withIntercept(rows.length, blocks, treatments);
  if (rows.some(({ place }) => place === null)) return { columns: plain, cautions: ['place-unknown'] };
  const places = indicatorColumns(
    'place',
    rows.map(({ place }) => place!),
  );
  const beyondBlocks = withoutDependent(withIntercept(rows.length, blocks, places));
  const placed = { names: [...beyondBlocks.names, ...treatments.names], X: [...beyondBlocks.X, ...treatments.X] };
  const confounded = dependentColumn(placed.X) !== null;
  return confounded ? { columns: plain, cautions: ['always-same-place'] } : { columns: placed, cautions: [] };
}

function withoutDependent({ names, X }: NamedColumns): NamedColumns {
  const dependent = dependentColumn(X);
  if (dependent === null) return { names, X };
  const kept = (_: unknown, j: number) => j !== dependent.column;
  return withoutDependent({ names: names.filter(kept), X: X.filter(kept) });
}

/** ln of the ratio of two treatments; one without a column of its own is what the others are set against. */
function contrast({ coefficients, covariance }: NegativeBinomialRegression, treatment: string, against: string) {
  const at = (name: string) => coefficients.findIndex((coefficient) => coefficient.name === `treatment ${name}`);
  const [i, j] = [at(treatment), at(against)];
  const size = coefficients.length;
  const estimate = (index: number) => (index < 0 ? 0 : coefficients[index]!.estimate);
  const cov = (a: number, b: number) => (a < 0 || b < 0 ? 0 : covariance[a * size + b]!);
  return {
    difference: estimate(i) - estimate(j),
    standardError: Math.sqrt(cov(i, i) + cov(j, j) - 2 * cov(i, j)),
  };
}

function shared(rows: readonly SideBySideCatch[], treatment: string, against: string): number {
  const blocksOf = (name: string) => new Set(rows.filter((row) => row.treatment === name).map(({ block }) => block));
  return [...blocksOf(treatment)].filter((block) => blocksOf(against).has(block)).length;
}

function pairsOf<T>(values: readonly T[]): [T, T][] {
  return values.flatMap((first, i) => values.slice(i + 1).map((second): [T, T] => [first, second]));
}

const distinct = (values: readonly string[]): string[] => [...new Set(values)];
