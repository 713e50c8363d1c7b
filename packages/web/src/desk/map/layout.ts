/**
 * Where names and marks stand so that none covers another: those of a farm in a column beside it, its stations on its
 * other side, each to be joined to its true place by a line. Lengths in CSS pixels.
 */
import { type Box, spread } from '../../ui/chart/labels.ts';

type Point = readonly [x: number, y: number];

/** A mark with a word, or without. */
export interface Item {
  readonly key: string;
  /** Its true place. */
  readonly at: Point;
  /** Half the height and half the width of the mark itself. */
  readonly half: number;
  /** Of the word beside it; 0: none. */
  readonly wide: number;
}

/** What stands together: one way to draw it. */
export interface Cluster {
  /** Width of a heading over the labels; null: none. */
  readonly heading: number | null;
  /** Marks with words, in a column on one side. */
  readonly labels: readonly Item[];
  /** Marks without, on the other. */
  readonly marks: readonly Item[];
}

/** Ways to draw one thing, the fullest first; where there is no room for one, the next is tried. */
export interface Group {
  readonly key: string;
  readonly ways: readonly Cluster[];
}

export interface Placed {
  readonly x: number;
  readonly y: number;
  /** Which way its word runs. */
  readonly anchor: 'start' | 'end';
}

export interface PlacedGroup {
  /** Place of the way in the group's ways. */
  readonly way: number;
  readonly heading: Placed | null;
  readonly items: ReadonlyMap<string, Placed>;
  readonly boxes: readonly Box[];
}

const LINE = 21;
const GAP = 16;
/** Between a mark's edge and its word. */
export const WORD_GAP = 5;
const MARGIN = 3;
const FAR = 80;
const NEAR = 24;
/** How far from its true place a column is tried, across and along, the nearest first. */
const MOVES = [0, NEAR, 48, FAR]
  .flatMap((away) => [0, -11, 11, -22, 22, -33, 33, -50, 50, -72, 72, -96, 96].map((shift) => ({ away, shift })))
  .sort((a, b) => wayOff(a) - wayOff(b));
function wayOff({ away, shift }: { away: number; shift: number }): number {
  return Math.abs(shift) * 0.35 + away * 0.4;
}
/** Above so many groups, none makes room for another, and all stand near or fold. */
const MANY = 40;
/** Places tried for a group that others then make room for. */
const TRIED = 8;

interface Tried {
  readonly placed: () => PlacedGroup;
  /** Square pixels that it shares with others, or that lie out of bounds. */
  readonly covered: number;
}

type Standing = Map<string, PlacedGroup>;

/**
 * Groups in the order of their importance: each takes the place nearest to its true one that overlaps nothing; one that
 * finds none stands as the next of its ways. Then others make room for those that had to, where that leaves more in full.
 *
 * @param bounds what words should not run out of; null: anything goes, as when only a part is in sight
 * @param reach how far from its true place a column may stand: on a small map long lines cross
 */
export function layOut(groups: readonly Group[], bounds: Box | null, reach = FAR): ReadonlyMap<string, PlacedGroup> {
  let standing: Standing = new Map();
  const isMany = groups.length > MANY;
  for (const group of groups) settle(group, standing, bounds, isMany ? Math.min(reach, NEAR) : reach);
  if (isMany) return standing;
  for (const group of groups) {
    if (standing.get(group.key)!.way === 0) continue;
    const others = boxesOf(standing, group.key);
    const places = [...candidates(group.ways[0]!, 0, others, bounds, reach)].sort((a, b) => a.covered - b.covered);
    for (const place of places.slice(0, TRIED)) {
      const placed = place.placed();
      const next: Standing = new Map(standing).set(group.key, placed);
      const covered = groups.filter(({ key }) => key !== group.key && touch(standing.get(key)!, placed));
      for (const { key } of covered) next.delete(key);
      for (const each of covered) settle(each, next, bounds, reach);
      if (lost(next) >= lost(standing)) continue;
      standing = next;
      break;
    }
  }
  return standing;
}

/** What a layout leaves out: the poorer ways weigh more. */
const lost = (standing: Standing): number => [...standing.values()].reduce((sum, { way }) => sum + way ** 2, 0);

const boxesOf = (standing: Standing, but: string): Box[] =>
  [...standing].flatMap(([key, { boxes }]) => (key === but ? [] : boxes));

const touch = (a: PlacedGroup, b: PlacedGroup): boolean => a.boxes.some((box) => b.boxes.some((other) => common(box, other) > 0));

/** Where a group finds no room at all it stands in its poorest way, over another if need be. */
function settle({ key, ways }: Group, standing: Standing, bounds: Box | null, reach: number): void {
  const others = boxesOf(standing, key);
  for (const [way, cluster] of ways.entries()) {
    const found = bestOf(cluster, way, others, bounds, reach);
    standing.set(key, found.placed());
    if (found.covered < 1) return;
  }
}

function bestOf(cluster: Cluster, way: number, others: readonly Box[], bounds: Box | null, reach: number): Tried {
  let best: Tried | null = null;
  for (const tried of candidates(cluster, way, others, bounds, reach)) {
    if (best === null || tried.covered < best.covered) best = tried;
    if (tried.covered < 1) break;
  }
  return best!;
}

/** Every place tried, the nearest first. */
function* candidates(cluster: Cluster, way: number, others: readonly Box[], bounds: Box | null, reach: number): Generator<Tried> {
  const sides = [column(cluster, true), column(cluster, false)];
  const whole = grown(around(sides.flatMap(({ boxes }) => boxes.flatMap(corners))), 100);
  const near = others.filter((box) => common(box, whole) > 0);
  for (const { away, shift } of MOVES.filter((move) => move.away <= reach && Math.abs(move.shift) <= reach + 20))
    for (const side of sides) {
      const boxes = side.boxes.map((box, index) => moved(box, side.parts[index]!, away, shift));
      let covered = 0;
      for (const box of boxes) {
        for (const other of near) covered += common(box, other);
        if (bounds) covered += 2 * (area(box) - common(box, bounds));
      }
      yield { covered, placed: () => placedAt(side, way, boxes, away, shift) };
    }
}

/** How one part of a cluster goes when it moves: its labels outward, the marks behind half as far, its ground not at all. */
type Part = -1 | 0 | 0.5 | -0.5 | 1;

interface Column {
  readonly boxes: readonly Box[];
  readonly parts: readonly Part[];
  readonly items: readonly (readonly [key: string, placed: Placed, part: Part])[];
  readonly heading: readonly [placed: Placed, part: Part] | null;
}

const moved = (box: Box, part: Part, away: number, shift: number): Box =>
  part === 0
    ? box
    : { left: box.left + part * away, right: box.right + part * away, top: box.top + shift, bottom: box.bottom + shift };

const movedSpot = (spot: Placed, part: Part, away: number, shift: number): Placed => ({
  ...spot,
  x: spot.x + part * away,
  y: spot.y + shift,
});

const placedAt = ({ items, heading }: Column, way: number, boxes: readonly Box[], away: number, shift: number): PlacedGroup => ({
  way,
  boxes,
  heading: heading && movedSpot(heading[0], heading[1], away, shift),
  items: new Map(items.map(([key, spot, part]) => [key, movedSpot(spot, part, away, shift)])),
});

/** A cluster with its labels on one side, at its true height. */
function column({ heading, labels, marks }: Cluster, right: boolean): Column {
  const ground = around([...labels, ...marks].map(({ at }) => at));
  const boxes: Box[] = [];
  const parts: Part[] = [];
  const items: [string, Placed, Part][] = [];
  const alone = labels.length + marks.length === 1;
  const stand = (members: readonly Item[], onRight: boolean, part: Part) => {
    const half = Math.max(0, ...members.map((item) => item.half));
    const gap = GAP + half;
    const x = alone ? ground.left : onRight ? ground.right + gap : ground.left - gap;
    const along = members.map(({ at, half: tall }) => ({ at: at[1], size: Math.max(LINE, 2 * tall + 3) }));
    const total = along.reduce((sum, { size }) => sum + size, 0);
    const ys = spread(along, ground.top - total, ground.bottom + total);
    members.forEach((item, index) => {
      const y = ys[index]!;
      items.push([item.key, { x, y, anchor: onRight ? 'start' : 'end' }, part]);
      const reach = item.half + (item.wide > 0 ? WORD_GAP + item.wide : 0);
      const tall = Math.max(item.half, item.wide > 0 ? 9 : 0);
      const [before, after] = onRight ? [item.half, reach] : [reach, item.half];
      boxes.push({ left: x - before - MARGIN, right: x + after + MARGIN, top: y - tall, bottom: y + tall });
      parts.push(part);
    });
    return { x, ys, half };
  };
  const outward: Part = right ? 1 : -1;
  const { x, ys, half } = stand(labels, right, outward);
  stand(marks, !right, right ? -0.5 : 0.5);
  let head: Column['heading'] = null;
  if (heading !== null && labels.length > 0) {
    const y = Math.min(...labels.map((item, index) => ys[index]! - Math.max(item.half, 10))) - 10;
    const edge = right ? x - half : x + half;
    head = [{ x: edge, y, anchor: right ? 'start' : 'end' }, outward];
    boxes.push({ left: right ? edge : edge - heading, right: right ? edge + heading : edge, top: y - 9, bottom: y + 9 });
    parts.push(outward);
  }
  if (!alone) {
    boxes.push(grown(ground, 4));
    parts.push(0);
  }
  return { boxes, parts, items, heading: head };
}

const corners = ({ left, right, top, bottom }: Box): Point[] => [
  [left, top],
  [right, bottom],
];

const grown = ({ left, right, top, bottom }: Box, by: number): Box => ({
  left: left - by,
  right: right + by,
  top: top - by,
  bottom: bottom + by,
});

export const around = (points: readonly Point[]): Box => ({
  left: Math.min(...points.map(([x]) => x)),
  right: Math.max(...points.map(([x]) => x)),
  top: Math.min(...points.map(([, y]) => y)),
  bottom: Math.max(...points.map(([, y]) => y)),
});

const area = ({ left, right, top, bottom }: Box): number => (right - left) * (bottom - top);

function common(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const tall = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && tall > 0 ? wide * tall : 0;
}
