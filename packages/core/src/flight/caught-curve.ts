/** A flight that is over, as its moths were caught: no curve is fitted to it, so none can lead its middle astray. */
import type { PooledSpan } from './pooled-catch.ts';

export interface CaughtCurve {
  /** Heat by which half had been caught, and half the stretch from 16 to 84 %: σ of a normal flight. */
  readonly half: number;
  readonly width: number;
}

/** Shares of a normal distribution one σ below and above its middle. */
const ONE_SIGMA = [0.1587, 0.8413] as const;

/**
 * `part`: of each span's count, what belongs to the flight. `fitted`: moths per mean trap of its fitted curve up to a heat.
 * Between two heats the catch per mean trap is that of the traps out there, spread evenly over each visit; where none was out,
 * also before the first night and after the last, it is the fitted curve's. Null when nothing was caught.
 */
export function caughtCurve(
  spans: readonly PooledSpan[],
  part: (span: PooledSpan) => number,
  fitted: (heat: number) => number,
): CaughtCurve | null {
  const edges = [...new Set(spans.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const place = new Map(edges.map((heat, i) => [heat, i]));
  const [density, traps] = [new Float64Array(edges.length), new Float64Array(edges.length)];
  for (const span of spans) {
    const { from, to, exposure, count } = span;
    if (to <= from) continue;
    const each = (count * part(span)) / (to - from);
    for (let at = place.get(from)!; edges[at]! < to; at++) {
      density[at]! += each;
      traps[at]! += exposure;
    }
  }
  const reached = new Float64Array(edges.length);
  reached[0] = fitted(edges[0]!);
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1]!, edges[i]!];
    const here = traps[i - 1]! > 0 ? ((to - from) * density[i - 1]!) / traps[i - 1]! : fitted(to) - fitted(from);
    reached[i] = reached[i - 1]! + here;
  }
  const total = reached.at(-1)! + fitted(Number.POSITIVE_INFINITY) - fitted(edges.at(-1)!);
  if (!(total > reached[0]!)) return null;
  const when = (share: number) => {
    const i = reached.findIndex((moths) => moths >= share * total);
    if (i <= 0) return i === 0 ? edges[0]! : edges.at(-1)!;
    const [before, after] = [reached[i - 1]!, reached[i]!];
    return edges[i - 1]! + ((share * total - before) / (after - before)) * (edges[i]! - edges[i - 1]!);
  };
  return { half: when(0.5), width: (when(ONE_SIGMA[1]) - when(ONE_SIGMA[0])) / 2 };
}
