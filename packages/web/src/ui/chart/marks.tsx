/** The marks that every chart is drawn with: axes, bands, lines, rules, and words that keep clear of one another. */
import type { Plot } from './Chart.tsx';
import { type Anchor, type Box, boxOf, type Label, LETTERS, place, spread, textWidth } from './labels.ts';

const named = (name: string, more: string | undefined) => (more ? `${name} ${more}` : name);

/** Heights with a line each, and what they stand for at the left. */
export function HeightAxis(props: {
  plot: Plot;
  y: (value: number) => number;
  ticks: readonly number[];
  text: (value: number) => string;
}) {
  const { plot, y, ticks, text } = props;
  return ticks.map((tick) => (
    <g key={tick}>
      <line className={tick === 0 ? 'ground' : 'grid'} x1={plot.left} x2={plot.right} y1={y(tick)} y2={y(tick)} />
      <text className="scale" x={plot.left - 6} y={y(tick) + 4} textAnchor="end">
        {text(tick)}
      </text>
    </g>
  ));
}

export interface PlacedTick {
  readonly x: number;
  readonly label: string;
}

/** What stands across, under the ground; a tick whose word would touch the one before it goes without. */
export function AcrossAxis(props: { ticks: readonly PlacedTick[]; y: number; anchor?: Anchor; away?: number }) {
  const { ticks, y, anchor = 'middle', away = 0 } = props;
  let free = Number.NEGATIVE_INFINITY;
  return ticks.map(({ x, label }) => {
    const { left, right } = boxOf({ x: x + away, y, anchor }, label);
    if (label === '' || left < free) return null;
    free = right + LETTERS / 2;
    return (
      <text key={x} className="scale" x={x + away} y={y} textAnchor={anchor}>
        {label}
      </text>
    );
  });
}

/** Names of the axes: upward at the top left, across at the bottom right. */
export function AxisNames({ up, across, plot, height }: { up?: string; across?: string; plot: Plot; height: number }) {
  return (
    <>
      {up && (
        <text x={Math.min(4, plot.left)} y={11}>
          {up}
        </text>
      )}
      {across && (
        <text x={plot.right} y={height - 6} textAnchor="end">
          {across}
        </text>
      )}
    </>
  );
}

export const Line = ({ d, className, dash }: { d: string; className?: string; dash?: string }) => (
  <path className={named('line', className)} d={d} strokeDasharray={dash} />
);

export const Band = ({ d, className }: { d: string; className?: string }) => <path className={named('band', className)} d={d} />;

/** A height to hold a line against. */
export const Level = ({ plot, y, className }: { plot: Pick<Plot, 'left' | 'right'>; y: number; className?: string }) => (
  <line className={named('rule', className)} x1={plot.left} x2={plot.right} y1={y} y2={y} />
);

/** A place across that something happens at. */
export const Upright = ({ plot, x, className }: { plot: Pick<Plot, 'top' | 'bottom'>; x: number; className?: string }) => (
  <line className={named('rule', className)} x1={x} x2={x} y1={plot.top} y2={plot.bottom} />
);

export const Dot = ({ x, y, r = 3.5, className }: { x: number; y: number; r?: number; className?: string }) => (
  <circle className={named('dot', className)} cx={x} cy={y} r={r} />
);

export type Word = Label & { readonly className?: string };

/** Words where there is room for them, the most important first; what finds none is left out. */
export function Words({ words, plot, taken }: { words: readonly Word[]; plot: Plot; taken?: readonly Box[] }) {
  return place(words, plot, taken).map((spot, index) => {
    const { text, className } = words[index]!;
    return (
      spot && (
        // biome-ignore lint/suspicious/noArrayIndexKey: words carry no state and two may be alike
        <text key={index} className={named('word', className)} x={spot.x} y={spot.y} textAnchor={spot.anchor}>
          {text}
        </text>
      )
    );
  });
}

/** A word at the end of a line that ends at a height. */
export interface EndWord {
  readonly text: string;
  readonly y: number;
  readonly className?: string;
}

const LINE = LETTERS * 1.15;

/** Baselines of words at a chart's right edge, each as near to the end of its line as all of them can be. */
const endLevels = (words: readonly EndWord[], plot: Plot): number[] =>
  spread(
    // A little above its line, not through it.
    words.map(({ y }) => ({ at: y - LETTERS * 0.75, size: LINE })),
    plot.top - LETTERS * 1.4,
    plot.bottom,
  ).map((middle) => middle + LETTERS * 0.33);

/** What the words at the right edge take up, for other words to keep clear of. */
export const endBoxes = (words: readonly EndWord[], plot: Plot): Box[] =>
  endLevels(words, plot).map((y, index) => boxOf({ x: plot.right - 4, y, anchor: 'end' }, words[index]!.text));

export function EndWords({ words, plot }: { words: readonly EndWord[]; plot: Plot }) {
  const levels = endLevels(words, plot);
  return words.map(({ text, className }, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: words carry no state and two may be alike
    <text key={index} className={named('word', className)} x={plot.right - 4} y={levels[index]} textAnchor="end">
      {text}
    </text>
  ));
}

/** Whether a word fits between two edges. */
export const fits = (text: string, from: number, to: number): boolean => textWidth(text) + 8 <= to - from;
