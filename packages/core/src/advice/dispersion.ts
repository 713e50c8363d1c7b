/** How much traps of one field differ in the same nights, from a program's own checks. */

import { groupBy } from '../base/group-by.ts';
import type { Shape } from '../base/shape.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { TrapDesign } from '../records/schema.ts';
import { dispersionWithinBlocks } from '../statistics/block-dispersion.ts';
import type { dispersionSchema } from './dispersion-schema.ts';
import { historyOf, once, type Prepared, visitsOf } from './prepare.ts';
import type { KBasis } from './types.ts';

export type CatchDispersion = Shape<typeof dispersionSchema>;
export type DispersionReason = CatchDispersion['reason'];

/** The newest stretches speak; more cost time and hardly change the figure. */
const MOST_BLOCKS = 80;
const Z_95 = 1.959963984540054;

/**
 * k from the traps of one design that informed one field over exactly the same nights.
 *
 * Counts are negative binomial with a mean of their own for each field and stretch of nights, so that only the scatter
 * between traps is left; likelihood is adjusted for the many means. Stretches in which nothing was caught say nothing of
 * k and are left out. A lasting difference between places is part of the scatter, as it is for whoever reads the mean.
 *
 * Estimated once for a prepared program.
 */
export function catchDispersion(prepared: Prepared, insect: string, design: TrapDesign): CatchDispersion {
  return once(prepared, visitsOf({ insect, design }), 'dispersion', () => estimateDispersion(prepared, insect, design));
}

function estimateDispersion(prepared: Prepared, insect: string, design: TrapDesign): CatchDispersion {
  const blocks = sharedNights(prepared, insect, design);
  const counts = blocks.flat();
  const moths = counts.reduce((sum, { count }) => sum + count!, 0);
  const seen = { blocks: blocks.length, counts: counts.length, moths };
  const assumed = (reason: DispersionReason): CatchDispersion => {
    const assumption = ASSUMPTIONS.catchDispersionK;
    return { k: assumption.value, reason, assumption, low: null, high: null, ...seen };
  };
  const { dispersionBlocks, dispersionSpareCounts, dispersionMoths } = ASSUMPTIONS;
  if (
    blocks.length < dispersionBlocks.value ||
    counts.length - blocks.length < dispersionSpareCounts.value ||
    moths < dispersionMoths.value
  )
    return assumed('too-few-checks');

  const fit = dispersionWithinBlocks(blocks.map((block) => block.map(({ count }) => count!)));
  if (fit === null) return assumed('no-fit');
  const { k, kStandardError } = fit;
  if (!fit.overdispersed || kStandardError === null) return assumed('no-scatter-found');
  const reach = Math.exp((Z_95 * kStandardError) / k);
  return { k, reason: 'own-checks', assumption: null, low: k / reach, high: k * reach, ...seen };
}

/** What a rate says of the k behind it. */
export function kBasis({ reason, low, high, counts }: CatchDispersion): KBasis {
  return reason === 'own-checks' ? { from: reason, low: low!, high: high!, counts } : { from: 'assumed', why: reason };
}

/** Informative intervals of two or more traps over the same nights at one field, with some catch; each interval once. */
function sharedNights(prepared: Prepared, insect: string, design: TrapDesign): CatchInterval[][] {
  const rows: { readonly field: string; readonly interval: CatchInterval }[] = [];
  for (const [cell, informing] of prepared.trapsByCell) {
    const own = informing.filter((trap) => trap.insect === insect && trap.design === design);
    // One trap alone in its field shares no nights with another.
    if (own.length < 2) continue;
    for (const trap of own)
      for (const interval of historyOf(prepared, trap).intervals)
        if (interval.count !== null && interval.lurePastLife !== true) rows.push({ field: cell, interval });
  }
  const used = new Set<CatchInterval>();
  const blocks: CatchInterval[][] = [];
  for (const group of groupBy(rows, ({ field, interval: { from, to } }) => `${field}\n${from}\n${to}`).values()) {
    const block = group.map(({ interval }) => interval).filter((interval) => !used.has(interval));
    if (block.length < 2 || block.every(({ count }) => count === 0)) continue;
    for (const interval of block) used.add(interval);
    blocks.push(block);
  }
  return blocks.sort((a, b) => b[0]!.to - a[0]!.to).slice(0, MOST_BLOCKS);
}
