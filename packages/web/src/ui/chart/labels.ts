/** Where the words of a chart stand, so that none lies over another. Lengths in CSS pixels. */

/** A label that runs along one line: where it would like to stand, and how much it takes. */
export interface Along {
  /** The middle of where it belongs. */
  readonly at: number;
  readonly size: number;
}

/**
 * The middles of labels side by side along a line, as near to where they belong as they can all be: in the order they
 * belong in, none over another, all between `from` and `to`. The sum of the squared moves is the least there is: labels
 * that would touch move as one block, whose place is the mean of theirs (pool adjacent violators; Ayer and others 1955).
 * Where there is no room for all, they are set evenly, and overlap as little as can be.
 *
 * @returns a middle for each, in the order given
 */
export function spread(labels: readonly Along[], from: number, to: number): number[] {
  const order = labels.map((_, index) => index).sort((a, b) => labels[a]!.at - labels[b]!.at || a - b);
  const taken = labels.reduce((sum, { size }) => sum + size, 0);
  const squeeze = taken > to - from ? (to - from) / taken : 1;
  const blocks: { members: number[]; size: number; wish: number; start: number }[] = [];
  for (const index of order) {
    const size = labels[index]!.size * squeeze;
    let block = { members: [index], size, wish: labels[index]!.at - size / 2, start: 0 };
    block.start = within(block.wish, from, to - block.size);
    for (let last = blocks.at(-1); last && last.start + last.size > block.start; last = blocks.at(-1)) {
      blocks.pop();
      const [n, m] = [last.members.length, block.members.length];
      const wish = (last.wish * n + (block.wish - last.size) * m) / (n + m);
      block = { members: [...last.members, ...block.members], size: last.size + block.size, wish, start: 0 };
      block.start = within(block.wish, from, to - block.size);
    }
    blocks.push(block);
  }
  const middles: number[] = new Array(labels.length);
  for (const { members, start } of blocks) {
    let edge = start;
    for (const index of members) {
      const size = labels[index]!.size * squeeze;
      middles[index] = edge + size / 2;
      edge += size;
    }
  }
  return middles;
}

const within = (value: number, least: number, most: number) => Math.max(least, Math.min(value, most));

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type Anchor = 'start' | 'middle' | 'end';

/** One place that a label may stand at: the point its text hangs on. */
export interface Spot {
  readonly x: number;
  /** Of the line that the letters stand on. */
  readonly y: number;
  readonly anchor: Anchor;
}

export interface Label {
  readonly text: string;
  /** The best first. */
  readonly spots: readonly Spot[];
  /** Letters in pixels; {@link LETTERS} unless told. */
  readonly letters?: number;
}

/** Height of a chart's letters. */
export const LETTERS = 12;

/** Of Inter, in letters' heights: wide enough for all but rows of capitals. */
const [LETTER, NARROW] = [0.6, 0.34];

/** How much room a text takes across, rather too much than too little: there is no page to measure it on. */
export function textWidth(text: string, letters = LETTERS): number {
  let sum = 0;
  for (const letter of text) sum += /[ .,:;'’|!ijl·]/.test(letter) ? NARROW : LETTER;
  return sum * letters;
}

export function boxOf({ x, y, anchor }: Spot, text: string, letters = LETTERS): Box {
  const width = textWidth(text, letters);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - letters * 0.85, bottom: y + letters * 0.25 };
}

export const overlaps = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const holds = (outer: Box, inner: Box): boolean =>
  outer.left <= inner.left && inner.right <= outer.right && outer.top <= inner.top && inner.bottom <= outer.bottom;

/**
 * A spot for each label, in the order of their importance: the first of its own that lies within `bounds` and clear of
 * `taken` and of the labels before it.
 *
 * @returns null for a label that has no such spot: it is left out, for a word over another is no word
 */
export function place(labels: readonly Label[], bounds: Box, taken: readonly Box[] = []): (Spot | null)[] {
  const full = [...taken];
  return labels.map(({ text, spots, letters }) => {
    for (const spot of spots) {
      const box = boxOf(spot, text, letters);
      if (!holds(bounds, box) || full.some((other) => overlaps(other, box))) continue;
      full.push(box);
      return spot;
    }
    return null;
  });
}

/** What a line takes up, as small boxes along it: words that keep clear of them do not lie on it. */
export function alongLine(points: readonly (readonly [x: number, y: number])[], step = 5): Box[] {
  const boxes: Box[] = [];
  for (const [index, [x, y]] of points.entries()) {
    const [fromX, fromY] = points[index - 1] ?? [x, y];
    const pieces = Math.max(1, Math.ceil(Math.hypot(x - fromX, y - fromY) / step));
    for (let piece = 1; piece <= pieces; piece++) {
      const [atX, atY] = [fromX + ((x - fromX) * piece) / pieces, fromY + ((y - fromY) * piece) / pieces];
      boxes.push({ left: atX - 1, right: atX + 1, top: atY - 1, bottom: atY + 1 });
    }
  }
  return boxes;
}

/** Spots at the end of a line: at its height, then step by step above and below it. */
export function besideEnd(x: number, y: number, anchor: Anchor, reach = 48, step = 4): Spot[] {
  const spots: Spot[] = [{ x, y, anchor }];
  for (let away = step; away <= reach; away += step) spots.push({ x, y: y - away, anchor }, { x, y: y + away, anchor });
  return spots;
}

/** Spots beside an upright line, from its top down: after it, then before it. */
export function besideUpright(x: number, { top, bottom }: Pick<Box, 'top' | 'bottom'>, step = 8): Spot[] {
  const spots: Spot[] = [];
  for (let y = top + LETTERS; y <= bottom - LETTERS / 2; y += step)
    spots.push({ x: x + 5, y, anchor: 'start' }, { x: x - 5, y, anchor: 'end' });
  return spots;
}

/** Spots around a point: above it first, then below, before and after. */
export const around = (x: number, y: number, away = 6): Spot[] => [
  { x, y: y - away, anchor: 'middle' },
  { x: x - away, y: y - away / 2, anchor: 'end' },
  { x: x + away, y: y - away / 2, anchor: 'start' },
  { x: x + away, y: y + away + LETTERS * 0.6, anchor: 'start' },
  { x: x - away, y: y + away + LETTERS * 0.6, anchor: 'end' },
  { x, y: y + away + LETTERS * 0.85, anchor: 'middle' },
  { x, y: y - away - LETTERS * 1.1, anchor: 'middle' },
];
