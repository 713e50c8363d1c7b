/** Sums, and what they are for, in words. */
import type { CostKind, Total } from '@duskwatch/core';
import { moneyText } from '../../format/money.ts';
import { insectName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';

/** `$1,200`, `$1,200 to $1,300`, or at least so much. */
export function totalText({ low, high, atLeast }: Total, currency: string): string {
  const w = seasonWords.budget;
  const [from, to] = [moneyText(low, currency), moneyText(high, currency)];
  if (atLeast) return w.atLeast(from);
  return from === to ? from : w.range(from, to);
}

/** What a row of the budget is of, in words. */
export function useThing(): (kind: CostKind, of: string | null) => string {
  const wording = useWording();
  return (kind, of) => {
    const name = seasonWords.budget.kinds[kind];
    if (of === null || of === 'any') return name;
    if (kind === 'trap') return `${name}, ${(wording.design as Readonly<Record<string, string>>)[of] ?? of}`;
    return kind === 'lure' ? `${name}, ${insectName(of)}` : `${name}, ${of}`;
  };
}
