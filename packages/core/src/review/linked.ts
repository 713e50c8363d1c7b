/** Groups of rows that share a trap or a night, directly or by way of others. */
import { groupBy } from '../base/group-by.ts';

/**
 * One block of each group but the one that holds the first row. Trap and night effects of groups that share neither are
 * told apart only up to a constant for each group: without an indicator for these blocks they are.
 */
export function spareBlocks(rows: readonly { readonly trap: string; readonly block: string }[]): Set<string> {
  const [byTrap, byBlock] = [groupBy(rows, ({ trap }) => trap), groupBy(rows, ({ block }) => block)];
  const reached = new Set<string>();
  const spare = new Set<string>();
  for (const { block: first } of rows) {
    if (reached.has(first)) continue;
    if (reached.size > 0) spare.add(first);
    const waiting = [first];
    for (let block = waiting.pop(); block !== undefined; block = waiting.pop()) {
      if (reached.has(block)) continue;
      reached.add(block);
      for (const { trap } of byBlock.get(block)!) for (const row of byTrap.get(trap)!) waiting.push(row.block);
    }
  }
  return spare;
}
