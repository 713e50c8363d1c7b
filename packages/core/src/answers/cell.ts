/** What one cell of the week says of its advice. What the advice rests on is a page by itself, asked for when it is opened. */
import type { Advice, Evidence } from '../advice/types.ts';
import type { CellAdvice, CellReason } from './week-schema.ts';

export function cellAdvice(advice: Advice): CellAdvice {
  const { verb, by, dueSince, rate, interval, confidence } = advice;
  return { verb, by, dueSince, rate, interval, confidence, reason: cellReason(advice) };
}

const first = <K extends Evidence['kind']>(advice: Advice, kind: K) =>
  advice.because.find((each): each is Evidence & { kind: K } => each.kind === kind);

/** The one thing that best says why there is no date to give; null where the verb has one, or nothing says it shortly. */
export function cellReason(advice: Advice): CellReason | null {
  if (advice.verb === 'none') return { kind: 'out-of-season', why: first(advice, 'out-of-season')?.why ?? 'stage' };
  if (advice.verb !== 'blind') return null;
  const lead = advice.because[0];
  if (lead?.kind === 'missing') return { kind: 'missing', what: lead.what };
  if (first(advice, 'trap-doubt')?.degree === 'strong') return { kind: 'trap-doubt' };
  const trap = first(advice, 'trap-unusable');
  if (trap) return { kind: 'trap-unusable', why: trap.why };
  const missing = first(advice, 'missing');
  if (missing) return { kind: 'missing', what: missing.what };
  return first(advice, 'lure-spent') ? { kind: 'lure-spent' } : null;
}

/** The traps that an advice's evidence names. */
export function trapsBehind(advice: Advice): string[] {
  return advice.because.flatMap((item) => {
    if (item.kind === 'rate') return item.checks.map(({ trapId }) => trapId);
    return 'trapId' in item && item.trapId !== null ? [item.trapId] : [];
  });
}
