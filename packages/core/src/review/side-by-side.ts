/**
 * Trap designs or lures compared in the same nights.
 *
 * What a night does to all traps of a site alike cancels, and each site gives a ratio of its own (`siteRatios`). Two traps
 * alike in design still differ by their posts, their setting and the age of their lures, and no number of nights at one
 * site averages that out: the interval rests on how far the sites differ from one another (`combineSeen`), or, with fewer
 * than three of them, on an assumption that is shown. In seeded simulations the interval of 80 % holds the truth in 75 to
 * 85 % with and without such differences (`side-by-side.test.ts`, docs/review-skill.md).
 */

import { groupBy } from '../base/group-by.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { LESSON_ASSUMPTIONS } from './assumptions.ts';
import { type Combined, combineAlong, combineAssumed, combineSeen, limitsOf } from './combine.ts';
import { type Estimate, type Learned, type NotKnown, notKnown } from './learned.ts';
import { type PairedBlock, type SiteRatio, siteRatios } from './site-ratios.ts';

export interface SideBySideCatch {
  /** What is compared: a trap design, or a lure. */
  readonly treatment: string;
  /** Shared by the traps compared: one site and the same nights. */
  readonly block: string;
  readonly site: string;
  /** The post the trap stood at, so that traps that changed posts are told from those that kept them; null: not recorded. */
  readonly place: string | null;
  /** The year in which the growing year of the block began. */
  readonly season: number;
  readonly count: number;
  readonly nights: number;
}

export interface TreatmentRatio {
  readonly treatment: string;
  /** What it is held against: of any two, always the same one. */
  readonly against: string;
  /** Catch of `treatment` over catch of `against`. */
  readonly ratio: Estimate;
  /** Blocks in which both stood. */
  readonly sharedBlocks: number;
  /** Sites, or arrangements of the posts of one, that each gave a ratio. */
  readonly sites: number;
  /** Whether differences between sites were seen or, with too few of them, assumed. */
  readonly scatter: 'seen' | 'assumed';
  /** Standard deviation of ln of the true ratios of the sites. */
  readonly siteLogSd: number;
  /** Sites that would bring both ends of the interval within `usefulFactor` of the ratio. */
  readonly sitesForUsefulRatio: number;
  /** Each season by itself, oldest first; empty where there is one. */
  readonly seasons: readonly SeasonRatio[];
  /** Null with fewer seasons than show one. */
  readonly trend: RatioTrend | null;
}

export interface SeasonRatio {
  readonly season: number;
  readonly ratio: Estimate;
  readonly sharedBlocks: number;
  readonly sites: number;
}

export interface RatioTrend {
  /** The ratio of one season over that of the season before. */
  readonly perYear: Estimate;
  /** False while the interval takes in 1. */
  readonly clear: boolean;
  readonly first: { readonly season: number; readonly ratio: number };
  readonly last: { readonly season: number; readonly ratio: number };
}

export interface SideBySide {
  /** Every two treatments that shared enough blocks. */
  readonly ratios: readonly TreatmentRatio[];
  /** Blocks left out because they say nothing: only one treatment stood there, or nothing was caught. */
  readonly leftOut: { readonly alone: number; readonly empty: number };
}

export type NoComparison = 'one-treatment' | 'too-few-shared-nights' | 'too-few-moths';

/**
 * What others are held against, first to last: the order of the published ratios. Other treatments follow by their name,
 * numbers by their value.
 */
const REFERENCES = ['wire-cone', 'mesh-cone', 'bucket', 'delta', 'other'];

export function compareSideBySide(
  observations: readonly SideBySideCatch[],
  { level = ASSUMPTIONS.intervalLevel.value }: { readonly level?: number } = {},
): Learned<SideBySide, NoComparison> {
  const { rows, leftOut } = informativeBlocks(observations);
  const treatments = distinct(rows.map(({ treatment }) => treatment)).sort(byReference);
  const tooFew = refusal(observations, rows, treatments);
  if (tooFew) return tooFew;
  const ratios = pairsOf(treatments).flatMap(([against, treatment]) => {
    const found = ratioOf(rows, treatment, against, level);
    return found === null ? [] : [found];
  });
  if (ratios.length === 0) return tooFewShared(0);
  return { known: true, ratios, leftOut };
}

function byReference(a: string, b: string): number {
  const rank = (treatment: string) => (REFERENCES.indexOf(treatment) + REFERENCES.length + 1) % (REFERENCES.length + 1);
  return rank(a) - rank(b) || a.localeCompare(b, 'en', { numeric: true });
}

/** Null where the two shared too few blocks. */
function ratioOf(rows: readonly SideBySideCatch[], treatment: string, against: string, level: number): TreatmentRatio | null {
  const blocks = pairedBlocks(rows, treatment, against);
  if (blocks.length < LESSON_ASSUMPTIONS.sharedBlocks.value) return null;
  const whole = togetherOf(blocks, level);
  const bySeason = [...groupBy(blocks, ({ season }) => String(season)).values()].sort((a, b) => a[0]!.season - b[0]!.season);
  const seasons =
    bySeason.length < 2
      ? []
      : bySeason
          .filter((own) => own.length >= LESSON_ASSUMPTIONS.sharedBlocks.value)
          .map((own) => ({ season: own[0]!.season, sharedBlocks: own.length, ...togetherOf(own, level, whole.k) }));
  const { measured, ratio, sites, scatter, siteLogSd } = whole;
  return {
    treatment,
    against,
    ratio,
    sharedBlocks: blocks.length,
    sites,
    scatter,
    siteLogSd,
    sitesForUsefulRatio: sitesFor(measured, siteLogSd),
    seasons: seasons.map(({ season, sharedBlocks, ratio: of, sites: n }) => ({ season, ratio: of, sharedBlocks, sites: n })),
    trend: trendOf(seasons, level),
  };
}

/** With so many sites, as sure of their own ratios as these, both ends are near enough. */
function sitesFor(measured: readonly SiteRatio[], siteLogSd: number): number {
  const own = measured.reduce((sum, { variance }) => sum + variance, 0) / measured.length;
  const reach = (n: number) =>
    limitsOf(
      { value: 0, standardError: Math.sqrt((own + siteLogSd ** 2) / n), df: n - 1, between: 0 },
      ASSUMPTIONS.intervalLevel.value,
    ).high;
  let n = 2;
  while (n < MOST_SITES && reach(n) > Math.log(LESSON_ASSUMPTIONS.usefulFactor.value)) n++;
  return n;
}

/** Nobody hangs more. */
const MOST_SITES = 1_000;

interface Block extends PairedBlock {
  readonly season: number;
  /** The site, and which trap stood where. */
  readonly arrangement: string;
}

function pairedBlocks(rows: readonly SideBySideCatch[], treatment: string, against: string): Block[] {
  const either = rows.filter((row) => row.treatment === treatment || row.treatment === against);
  return [...groupBy(either, ({ block }) => block).values()].flatMap((block): Block[] => {
    const treated = block.map((row) => row.treatment === treatment);
    const caught = block.some(({ count }) => count > 0);
    if (!caught || !treated.includes(true) || !treated.includes(false)) return [];
    const posts = block.map((row) => `${row.place ?? ''} ${row.treatment}`).sort();
    return [
      {
        counts: block.map(({ count }) => count),
        nights: block.map(({ nights }) => nights),
        treated,
        season: block[0]!.season,
        arrangement: [block[0]!.site, ...posts].join('|'),
      },
    ];
  });
}

function togetherOf(blocks: readonly Block[], level: number, known?: number) {
  const { sites: measured, k } = siteRatios([...groupBy(blocks, ({ arrangement }) => arrangement).values()], known);
  const seen = measured.length >= LESSON_ASSUMPTIONS.sitesSeen.value;
  const values = measured.map(({ logRatio, variance }) => ({ value: logRatio, variance }));
  const combined = seen ? combineSeen(values) : combineAssumed(values, 2 * LESSON_ASSUMPTIONS.trapLogSd.value ** 2);
  return {
    measured,
    k,
    ratio: factor(combined, level),
    sites: measured.length,
    scatter: seen ? ('seen' as const) : ('assumed' as const),
    siteLogSd: Math.sqrt(combined.between),
  };
}

function trendOf(
  seasons: readonly { readonly season: number; readonly measured: readonly SiteRatio[] }[],
  level: number,
): RatioTrend | null {
  if (seasons.length < LESSON_ASSUMPTIONS.seasonsForTrend.value) return null;
  const measured = seasons.map(({ season, measured: sites }) => {
    // The posts are the same from year to year, so that what they do to the ratio is no part of its scatter here.
    const { value, standardError } = combineAssumed(
      sites.map(({ logRatio, variance }) => ({ value: logRatio, variance })),
      0,
    );
    return { x: season, value, variance: standardError ** 2 };
  });
  const { at, slope } = combineAlong(measured);
  const perYear = factor(slope, level);
  const ratioIn = (season: number) => ({ season, ratio: Math.exp(at(season)) });
  return {
    perYear,
    clear: perYear.low > 1 || perYear.high < 1,
    first: ratioIn(seasons[0]!.season),
    last: ratioIn(seasons.at(-1)!.season),
  };
}

function factor(combined: Combined, level: number): Estimate {
  const { low, high } = limitsOf(combined, level);
  return { value: Math.exp(combined.value), low: Math.exp(low), high: Math.exp(high), level };
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
  const least = LESSON_ASSUMPTIONS.sharedBlocks.value;
  const blocks = distinct(rows.map(({ block }) => block)).length;
  if (blocks < least) return tooFewShared(blocks);
  const moths = LESSON_ASSUMPTIONS.mothsPerTreatment.value;
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

function tooFewShared(blocks: number): NotKnown<NoComparison> {
  const least = LESSON_ASSUMPTIONS.sharedBlocks.value;
  return notKnown(
    'too-few-shared-nights',
    `${blocks} blocks with two treatments and some catch`,
    `${least} or more`,
    `Keep them side by side for at least ${least - blocks} more checks that catch something.`,
    { figures: { have: blocks, need: least } },
  );
}

function pairsOf<T>(values: readonly T[]): [T, T][] {
  return values.flatMap((first, i) => values.slice(i + 1).map((second): [T, T] => [first, second]));
}

const distinct = (values: readonly string[]): string[] => [...new Set(values)];
