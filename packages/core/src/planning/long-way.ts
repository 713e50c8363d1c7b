/**
 * A short open way past very many places, without a table of all distances between them.
 *
 * 2-opt and Or-opt among near neighbours only, then kicks that touch a short stretch each, as many as are allowed: the
 * same places always give the same way. Sources: Bentley 1992, ORSA J. Computing 4:387–411 (neighbour lists and
 * don't-look bits); Martin, Otto & Felten 1991, Complex Systems 5:299–326 (kicks); both from memory.
 */
import { randomSteps } from './random-steps.ts';

/** Places on a plane, in any unit of length. */
export interface Plane {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

export interface LongWayOptions {
  /** The place the way begins at; null: wherever it is shortest. */
  readonly start: number | null;
  /** Kicks tried; left out: a few for each place. */
  readonly kicks?: number | undefined;
}

const NEIGHBOURS = 8;
const LONGEST_STRETCH = 3;
/** A kick changes the order within so many places. */
const KICK_REACH = 30;
const KICKS_PER_PLACE = 12;
const MOST_KICKS = 30_000;
const ROUNDING = 1e-12;

/** All places once, in a short order. */
export function longWay({ x, y }: Plane, { start, kicks }: LongWayOptions): number[] {
  const n = x.length;
  const distance = (a: number, b: number) => Math.hypot(x[a]! - x[b]!, y[a]! - y[b]!);
  const near = neighbours({ x, y }, Math.min(NEIGHBOURS, n - 1));
  let order = inStrips({ x, y });
  if (start !== null) order = Int32Array.from([start, ...order.filter((place) => place !== start)]);
  const way = new Way(order, near, distance, start === null ? 0 : 1);
  way.improve([...order]);
  const random = randomSteps();
  for (let left = kicks ?? Math.min(MOST_KICKS, KICKS_PER_PLACE * n); left > 0 && n > 8; left--) way.kick(random);
  return [...way.order];
}

/** Up one strip and down the next. */
function inStrips({ x, y }: Plane): Int32Array {
  const n = x.length;
  const [left, right] = extent(x);
  const [bottom, top] = extent(y);
  const width = Math.sqrt(((right - left) * (top - bottom)) / Math.max(1, n / 3)) || Math.max(1e-9, right - left);
  const strip = (place: number) => Math.floor((x[place]! - left) / width);
  const upwards = (place: number) => (strip(place) % 2 === 0 ? y[place]! : -y[place]!);
  return Int32Array.from([...x.keys()].sort((a, b) => strip(a) - strip(b) || upwards(a) - upwards(b) || a - b));
}

function extent(values: Float64Array): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) [low, high] = [Math.min(low, value), Math.max(high, value)];
  return [low, high];
}

/** Of each place the nearest others, nearest first, looked for in ever more squares around it. */
function neighbours(plane: Plane, count: number): Int32Array[] {
  const { x, y } = plane;
  const n = x.length;
  const [left, right] = extent(x);
  const [bottom, top] = extent(y);
  const side = Math.max(
    Math.sqrt(((right - left) * (top - bottom)) / Math.max(1, n / 2)),
    (right - left + top - bottom) / (4 * n),
    1e-9,
  );
  const column = (place: number) => Math.floor((x[place]! - left) / side);
  const row = (place: number) => Math.floor((y[place]! - bottom) / side);
  const squares = new Map<string, number[]>();
  for (let place = 0; place < n; place++) {
    const key = `${column(place)} ${row(place)}`;
    const there = squares.get(key);
    if (there) there.push(place);
    else squares.set(key, [place]);
  }
  const widest = Math.ceil(Math.max(right - left, top - bottom) / side) + 1;
  return Array.from({ length: n }, (_, place) => {
    const found: number[] = [];
    const away = (other: number) => (x[other]! - x[place]!) ** 2 + (y[other]! - y[place]!) ** 2;
    // What lies in the next ring may still be nearer than the last of those found.
    for (let ring = 0, more = 1; ring <= widest && more >= 0; ring++) {
      for (const square of ringOf(column(place), row(place), ring)) found.push(...(squares.get(square) ?? []));
      if (found.length > count) more--;
    }
    return Int32Array.from(
      found
        .filter((other) => other !== place)
        .sort((a, b) => away(a) - away(b) || a - b)
        .slice(0, count),
    );
  });
}

function* ringOf(column: number, row: number, ring: number): Generator<string> {
  for (let across = -ring; across <= ring; across++) {
    const whole = Math.abs(across) === ring;
    for (let up = -ring; up <= ring; up += whole || ring === 0 ? 1 : 2 * ring) yield `${column + across} ${row + up}`;
  }
}

/** A way as it is improved; places before `fixed` stay. */
class Way {
  order: Int32Array;
  #at: Int32Array;
  #kept: Int32Array;
  readonly #near: readonly Int32Array[];
  readonly #distance: (a: number, b: number) => number;
  readonly #fixed: number;
  /** Places to look at again. */
  readonly #queued: Uint8Array;
  #queue: number[] = [];

  constructor(order: Int32Array, near: readonly Int32Array[], distance: (a: number, b: number) => number, fixed: number) {
    this.order = order;
    this.#at = new Int32Array(order.length);
    this.#kept = new Int32Array(order.length);
    this.#near = near;
    this.#distance = distance;
    this.#fixed = fixed;
    this.#queued = new Uint8Array(order.length);
    for (let i = 0; i < order.length; i++) this.#at[order[i]!] = i;
  }

  /** Length between two places of the order; 0 beyond either end. */
  #leg(i: number, j: number): number {
    if (i < 0 || j >= this.order.length) return 0;
    return this.#distance(this.order[i]!, this.order[j]!);
  }

  #look(...places: readonly number[]): void {
    for (const i of places) {
      if (i < 0 || i >= this.order.length) continue;
      const place = this.order[i]!;
      if (this.#queued[place]) continue;
      this.#queued[place] = 1;
      this.#queue.push(place);
    }
  }

  /** Until no place has a better one near; returns what was gained. */
  improve(places: readonly number[]): number {
    for (const place of places) this.#look(this.#at[place]!);
    let gained = 0;
    for (let next = 0; next < this.#queue.length; next++) {
      const place = this.#queue[next]!;
      this.#queued[place] = 0;
      for (let gain = this.#better(place); gain > 0; gain = this.#better(place)) gained += gain;
    }
    this.#queue = [];
    return gained;
  }

  #better(place: number): number {
    return this.#turn(place) || this.#move(place);
  }

  /** Turns a stretch around, so that a place comes to lie beside one near to it. */
  #turn(place: number): number {
    const i = this.#at[place]!;
    for (const other of this.#near[place]!) {
      const j = this.#at[other]!;
      const closer = this.#distance(place, other);
      const [low, high] = i < j ? [i, j] : [j, i];
      // Both stay where they are and what lies behind the first is turned, or what lies before the second.
      const after = this.#leg(low, low + 1) + this.#leg(high, high + 1) - closer - this.#leg(low + 1, high + 1);
      if (after > ROUNDING && high > low + 1) return this.#reverse(low + 1, high, after);
      const crossing = low > 0 && high - 1 >= 0 ? this.#between(low - 1, high - 1) : 0;
      const before = this.#leg(low - 1, low) + this.#leg(high - 1, high) - closer - crossing;
      if (before > ROUNDING && low >= this.#fixed && high > low + 1) return this.#reverse(low, high - 1, before);
    }
    return 0;
  }

  #between(i: number, j: number): number {
    return this.#distance(this.order[i]!, this.order[j]!);
  }

  #reverse(from: number, to: number, gain: number): number {
    if (from < this.#fixed) return 0;
    this.#look(from - 1, from, to, to + 1);
    for (let [i, j] = [from, to]; i <= j; i++, j--) {
      const [a, b] = [this.order[i]!, this.order[j]!];
      this.#put(i, b);
      this.#put(j, a);
    }
    return gain;
  }

  #put(i: number, place: number): void {
    this.order[i] = place;
    this.#at[place] = i;
  }

  /** Moves a stretch that ends at a place to beside one near to it, either way round. */
  #move(place: number): number {
    const n = this.order.length;
    const i = this.#at[place]!;
    for (let size = 1; size <= Math.min(LONGEST_STRETCH, n - 2); size++) {
      for (const from of size === 1 ? [i] : [i, i - size + 1]) {
        const to = from + size - 1;
        if (from < this.#fixed || to >= n) continue;
        const freed =
          this.#leg(from - 1, from) + this.#leg(to, to + 1) - (from > 0 && to + 1 < n ? this.#between(from - 1, to + 1) : 0);
        if (freed <= ROUNDING) continue;
        const far = this.order[from === i ? to : from]!;
        for (const other of this.#near[place]!) {
          const closer = this.#distance(place, other);
          if (closer >= freed - ROUNDING) break;
          const k = this.#at[other]!;
          if (k >= from && k <= to) continue;
          for (const side of [k - 1, k] as const) {
            // Between `side` and the one after it, the place itself beside `other`.
            if (side + 1 < this.#fixed || side === to || side === from - 1) continue;
            const beyond = side === k ? k + 1 : k - 1;
            const added =
              closer + (beyond >= 0 && beyond < n ? this.#distance(far, this.order[beyond]!) : 0) - this.#leg(side, side + 1);
            const gain = freed - added;
            if (gain <= ROUNDING) continue;
            const placeFirst = side === k;
            this.#shift(from, to, side, (from === i) !== placeFirst);
            return gain;
          }
        }
      }
    }
    return 0;
  }

  /** Puts the stretch behind the place that is at `side`, turned around or not. */
  #shift(from: number, to: number, side: number, turned: boolean): void {
    const size = to - from + 1;
    this.#look(from - 1, from, to, to + 1, side, side + 1);
    const stretch = this.order.slice(from, to + 1);
    if (turned) stretch.reverse();
    let first: number;
    if (side < from) {
      for (let i = from - 1; i > side; i--) this.#put(i + size, this.order[i]!);
      first = side + 1;
    } else {
      for (let i = to + 1; i <= side; i++) this.#put(i - size, this.order[i]!);
      first = side - size + 1;
    }
    for (let i = 0; i < size; i++) this.#put(first + i, stretch[i]!);
  }

  /** Lets two stretches that follow one another change places, improves what is near, and takes it back if that was no gain. */
  kick(random: () => number): void {
    const n = this.order.length;
    const reach = Math.min(KICK_REACH, n - 2 - this.#fixed);
    if (reach < 3) return;
    const from = this.#fixed + 1 + Math.floor(random() * (n - reach - this.#fixed - 1));
    const cuts = [0, 1, 2].map(() => from + Math.floor(random() * reach)).sort((a, b) => a - b);
    const [a, b, c] = cuts as [number, number, number];
    if (a === b || b === c) return;
    this.#kept.set(this.order);
    const legs = () => this.#leg(a - 1, a) + this.#leg(a + c - b - 1, a + c - b) + this.#leg(c - 1, c);
    const before = this.#leg(a - 1, a) + this.#leg(b - 1, b) + this.#leg(c - 1, c);
    const swapped = [...this.order.subarray(b, c), ...this.order.subarray(a, b)];
    for (let i = 0; i < swapped.length; i++) this.#put(a + i, swapped[i]!);
    const lost = legs() - before;
    const touched = [a - 1, a, a + c - b - 1, a + c - b, c - 1, c].filter((i) => i >= 0 && i < n).map((i) => this.order[i]!);
    if (this.improve(touched) < lost - ROUNDING) {
      for (let i = 0; i < n; i++) if (this.order[i] !== this.#kept[i]) this.#put(i, this.#kept[i]!);
    }
  }
}
