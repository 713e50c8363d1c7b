/** The dispersion k within blocks of counts, each block with a mean of its own. */
import { goldenSection } from './golden-section.ts';
import { countTable, describeK, logLikelihood } from './negative-binomial.ts';
import { K_SEARCH } from './negative-binomial-regression.ts';

export interface BlockDispersion {
  /** ∞ when the counts scatter no more about the means of their blocks than chance alone. */
  readonly k: number;
  readonly kStandardError: number | null;
  readonly overdispersed: boolean;
}

/**
 * k of greatest likelihood adjusted for the means fitted with it (Cox & Reid 1987, J. R. Statist. Soc. B 49:1–39, from
 * memory): what `negativeBinomialRegression` with one column for each block gives, without its matrices, because whatever
 * k is the mean of a block is the mean of its counts. Blocks need a count above zero each. Null when some value is no count.
 */
export function dispersionWithinBlocks(blocks: readonly (readonly number[])[]): BlockDispersion | null {
  const table = countTable(blocks.flat());
  if (table === null) return null;
  const means = blocks.map((block) => block.reduce((sum, count) => sum + count, 0) / block.length);
  const fitted = Float64Array.from(blocks.flatMap((block, b) => block.map(() => means[b]!)));
  const kOf = (logK: number): number => (logK >= K_SEARCH.mostLogK ? Number.POSITIVE_INFINITY : Math.exp(logK));
  const adjusted = (logK: number): number => {
    const k = kOf(logK);
    const information = blocks.reduce((sum, { length }, b) => sum + Math.log(length / (1 / means[b]! + 1 / k)), 0);
    return logLikelihood(table, fitted, k) - information / 2;
  };
  const { at } = goldenSection(adjusted, K_SEARCH.leastLogK, K_SEARCH.mostLogK, K_SEARCH.within);
  return describeK(table, fitted, kOf(at));
}
