import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alongLine, around, type Box, besideEnd, boxOf, LETTERS, overlaps, place, spread } from './labels.ts';

const TOLERANCE = 1e-6;

describe('labels along the end of a chart', () => {
  test('stand where their lines end while there is room', () => {
    expect(
      spread(
        [
          { at: 80, size: 14 },
          { at: 20, size: 14 },
        ],
        0,
        100,
      ),
    ).toEqual([80, 20]);
  });

  test('of two seasons that end at one height, move apart by half a label each', () => {
    expect(
      spread(
        [
          { at: 50, size: 14 },
          { at: 50, size: 14 },
        ],
        0,
        100,
      ),
    ).toEqual([43, 57]);
  });

  test('at the ground stay above it', () => {
    expect(
      spread(
        [
          { at: 100, size: 14 },
          { at: 99, size: 14 },
        ],
        0,
        100,
      ),
    ).toEqual([93, 79]);
  });

  const some = fc.array(
    fc.record({ at: fc.double({ min: -50, max: 250, noNaN: true }), size: fc.integer({ min: 1, max: 24 }) }),
    {
      maxLength: 12,
    },
  );

  test('never lie over one another nor leave the chart where there is room, and keep the order of their lines', () => {
    fc.assert(
      fc.property(some, (labels) => {
        const to = Math.max(
          200,
          labels.reduce((sum, { size }) => sum + size, 0),
        );
        const middles = spread(labels, 0, to);
        labels.forEach(({ size }, index) => {
          expect(middles[index]! - size / 2).toBeGreaterThanOrEqual(-TOLERANCE);
          expect(middles[index]! + size / 2).toBeLessThanOrEqual(to + TOLERANCE);
        });
        for (let a = 0; a < labels.length; a++)
          for (let b = a + 1; b < labels.length; b++) {
            const [one, other] = labels[a]!.at <= labels[b]!.at ? [a, b] : [b, a];
            const gap = middles[other]! - middles[one]! - (labels[one]!.size + labels[other]!.size) / 2;
            expect(gap).toBeGreaterThanOrEqual(-TOLERANCE);
          }
      }),
    );
  });

  test('move no farther in all than any other way of setting them apart', () => {
    const moved = (labels: readonly { at: number; size: number }[], middles: readonly number[]) =>
      labels.reduce((sum, { at }, index) => sum + (middles[index]! - at) ** 2, 0);
    fc.assert(
      fc.property(
        some,
        fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (labels, gaps) => {
          // Some other way that keeps the order and the chart's edges: labels from the top with free gaps between them.
          const order = labels.map((_, index) => index).sort((a, b) => labels[a]!.at - labels[b]!.at || a - b);
          const other: number[] = [];
          let edge = 0;
          for (const [nth, index] of order.entries()) {
            other[index] = edge + gaps[nth]! + labels[index]!.size / 2;
            edge = other[index]! + labels[index]!.size / 2;
          }
          const to = Math.max(200, edge);
          expect(moved(labels, spread(labels, 0, to))).toBeLessThanOrEqual(moved(labels, other) + 1e-3);
        },
      ),
    );
  });
});

describe('labels about a chart', () => {
  const bounds: Box = { left: 0, top: 0, right: 300, bottom: 120 };

  test('two years and a threshold at one height are read one under the other', () => {
    const ends = ['2025', '2024', 'threshold 0.2 a night'].map((text) => ({ text, spots: besideEnd(290, 60, 'end') }));
    const spots = place(ends, bounds);
    expect(spots[0]).toEqual({ x: 290, y: 60, anchor: 'end' });
    const boxes = spots.map((spot, index) => boxOf(spot!, ends[index]!.text));
    for (const [a, b] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const)
      expect(overlaps(boxes[a]!, boxes[b]!)).toBe(false);
  });

  test('a label without room is left out, not written over another', () => {
    const narrow: Box = { left: 0, top: 0, right: 40, bottom: LETTERS * 1.2 };
    const one = { text: '2025', spots: besideEnd(38, 11, 'end') };
    expect(place([one, one], narrow)).toEqual([one.spots[0], null]);
  });

  test('a name stands beside its curve, not on it', () => {
    const curve = Array.from({ length: 30 }, (_, index) => [index * 10, 110 - index * 3.5] as const);
    const taken = alongLine(curve);
    const spots = curve.flatMap(([x, y]) => around(x, y));
    const [spot] = place([{ text: 'stop: above', spots }], bounds, taken);
    const box = boxOf(spot!, 'stop: above');
    expect(taken.some((piece) => overlaps(piece, box))).toBe(false);
    // Densely enough that no letter slips between two pieces.
    for (const [index, piece] of taken.slice(1).entries())
      expect(Math.hypot(piece.left - taken[index]!.left, piece.top - taken[index]!.top)).toBeLessThanOrEqual(5 + TOLERANCE);
  });

  test('no two lie over one another or over what is taken, and none leaves the chart', () => {
    const point = fc.record({ x: fc.integer({ min: -20, max: 320 }), y: fc.integer({ min: -20, max: 140 }) });
    const label = fc.record({ text: fc.string({ minLength: 1, maxLength: 14 }), at: point });
    fc.assert(
      fc.property(fc.array(label, { maxLength: 12 }), fc.array(point, { maxLength: 3 }), (labels, marks) => {
        const taken = marks.map(({ x, y }) => ({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 }));
        const asked = labels.map(({ text, at }) => ({ text, spots: around(at.x, at.y) }));
        const boxes = place(asked, bounds, taken).flatMap((spot, index) => (spot ? [boxOf(spot, asked[index]!.text)] : []));
        boxes.forEach((box, index) => {
          expect(box.left >= 0 && box.right <= 300 && box.top >= 0 && box.bottom <= 120).toBe(true);
          for (const other of [...boxes.slice(index + 1), ...taken]) expect(overlaps(box, other)).toBe(false);
        });
      }),
    );
  });
});
