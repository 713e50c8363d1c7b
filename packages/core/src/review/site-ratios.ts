/**
 * The ratio of two treatments at each site where both stood, from counts of the same nights.
 *
 * Counts are negative binomial with a common k; the logarithm of the mean adds up the block (one stretch of nights at one
 * site) and, at each site, the treatment. Blocks lie within sites, so each is solved for by itself and no matrix is built.
 */
import { goldenSection } from '../statistics/golden-section.ts';
import { countTable, logLikelihood } from '../statistics/negative-binomial.ts';
import { K_SEARCH } from '../statistics/negative-binomial-regression.ts';

/** Moths and nights of both treatments in one block; one entry for each trap. */
export interface PairedBlock {
  readonly counts: readonly number[];
  readonly nights: readonly number[];
  /** True for traps of the treatment, false for those it is held against. */
  readonly treated: readonly boolean[];
}

export interface SiteRatio {
  /** ln of the catch of the treatment over that of the other. */
  readonly logRatio: number;
  /** From the counts alone, as if the two traps were alike in all but the treatment. */
  readonly variance: number;
}

/**
 * A site where one side caught nothing has no finite ratio: each is held, as loosely as this standard deviation, to the
 * ratio of all moths.
 */
const LOOSE_LOG_SD = 1.5;

/**
 * @param sites blocks of each site, each with some catch and both treatments
 * @param known k where it was found already, as for one season of several
 */
export function siteRatios(
  sites: readonly (readonly PairedBlock[])[],
  known?: number,
): { readonly k: number; readonly sites: readonly SiteRatio[] } {
  const centre = ratioOfTotals(sites.flat());
  const starts = sites.map((blocks) => ({ logRatio: centre, levels: blocks.map(() => Number.NaN) }));
  const fitAt = (k: number) => sites.map((blocks, s) => fitSite(blocks, k, centre, starts[s]!));
  const k = known ?? likeliestK(sites, fitAt);
  return { k, sites: fitAt(k).map(({ logRatio, variance }) => ({ logRatio, variance })) };
}

/** Likelihood adjusted for the means fitted with it (Cox & Reid 1987, J. R. Statist. Soc. B 49:1–39, from memory). */
function likeliestK(sites: readonly (readonly PairedBlock[])[], fitAt: (k: number) => readonly SiteFit[]): number {
  const table = countTable(sites.flat().flatMap(({ counts }) => counts))!;
  const kOf = (logK: number): number => (logK >= K_SEARCH.mostLogK ? Number.POSITIVE_INFINITY : Math.exp(logK));
  const adjusted = (logK: number): number => {
    const fits = fitAt(kOf(logK));
    const means = Float64Array.from(fits.flatMap((fit) => fit.means));
    const information = fits.reduce((sum, fit) => sum + fit.logBlockInformation - Math.log(fit.variance), 0);
    return logLikelihood(table, means, kOf(logK)) - information / 2;
  };
  return kOf(goldenSection(adjusted, K_SEARCH.leastLogK, K_SEARCH.mostLogK, NEAR_ENOUGH).at);
}

/** Of ln k, on which the ratios hardly hang. */
const NEAR_ENOUGH = 0.02;

/** Ratio of all moths per night; half a moth stands for none. */
function ratioOfTotals(blocks: readonly PairedBlock[]): number {
  const perNight = (wanted: boolean) => {
    let [moths, nights] = [0, 0];
    for (const { counts, nights: of, treated } of blocks) {
      for (const [i, count] of counts.entries()) if (treated[i] === wanted) [moths, nights] = [moths + count, nights + of[i]!];
    }
    return Math.max(0.5, moths) / nights;
  };
  return Math.log(perNight(true) / perNight(false));
}

interface SiteFit extends SiteRatio {
  readonly logBlockInformation: number;
  readonly means: readonly number[];
}

/** Fisher scoring for the ratio, each block at its own best in every step; `start` is where the fit before ended. */
function fitSite(
  blocks: readonly PairedBlock[],
  k: number,
  centre: number,
  start: { logRatio: number; readonly levels: number[] },
): SiteFit {
  const hold = 1 / LOOSE_LOG_SD ** 2;
  let { logRatio } = start;
  let found = { score: 0, information: 0, logBlockInformation: 0, means: [] as number[] };
  for (let i = 0; i < MOST_STEPS; i++) {
    found = scoresAt(blocks, k, logRatio, start.levels);
    const step = (found.score - hold * (logRatio - centre)) / (found.information + hold);
    logRatio += Math.max(-1, Math.min(1, step));
    if (Math.abs(step) < PRECISE) break;
  }
  start.logRatio = logRatio;
  const { logBlockInformation, means, information } = found;
  return { logRatio, variance: 1 / (information + hold), logBlockInformation, means };
}

const MOST_STEPS = 60;
const PRECISE = 1e-7;

/** `levels`: ln of each block's moths per night, kept from one step to the next. */
function scoresAt(blocks: readonly PairedBlock[], k: number, logRatio: number, levels: number[]) {
  const factor = Math.exp(logRatio);
  let [score, information, logBlockInformation] = [0, 0, 0];
  const means: number[] = [];
  for (const [b, { counts, nights, treated }] of blocks.entries()) {
    const exposure = nights.map((n, i) => n * (treated[i] ? factor : 1));
    const level = levelOf(counts, exposure, k, levels[b]!);
    levels[b] = level;
    let [ofTreated, ofOther] = [0, 0];
    for (const [i, count] of counts.entries()) {
      const mean = exposure[i]! * Math.exp(level);
      const weight = mean / (1 + mean / k);
      means.push(mean);
      if (treated[i]) [ofTreated, score] = [ofTreated + weight, score + (count - mean) / (1 + mean / k)];
      else ofOther += weight;
    }
    information += (ofTreated * ofOther) / (ofTreated + ofOther);
    logBlockInformation += Math.log(ofTreated + ofOther);
  }
  return { score, information, logBlockInformation, means };
}

/** ln of the rate at which the counts of one block are most likely. */
function levelOf(counts: readonly number[], exposure: readonly number[], k: number, from: number): number {
  const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
  let level = Number.isNaN(from) ? Math.log(total(counts) / total(exposure)) : from;
  for (let i = 0; i < MOST_STEPS; i++) {
    let [slope, information] = [0, 0];
    for (const [j, count] of counts.entries()) {
      const mean = exposure[j]! * Math.exp(level);
      slope += (count - mean) / (1 + mean / k);
      information += mean / (1 + mean / k);
    }
    const step = Math.max(-2, Math.min(2, slope / information));
    level += step;
    if (Math.abs(step) < PRECISE) break;
  }
  return level;
}
