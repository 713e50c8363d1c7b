import { describe, expect, it } from 'vitest';
import { LABEL_GRIDS, labelCell, labelGrid, labelSheets, labelsPerSheet, PAPER_MM } from './label-grids.ts';
import { legibleFromM } from './legibility.ts';

describe('label sheets', () => {
  it('lie wholly on their paper, no label over another', () => {
    for (const grid of LABEL_GRIDS) {
      const cells = Array.from({ length: labelsPerSheet(grid) }, (_, index) => labelCell(grid, index));
      const paper = PAPER_MM[grid.paper];
      for (const [i, a] of cells.entries()) {
        expect(a.x, grid.id).toBeGreaterThanOrEqual(-1e-9);
        expect(a.y, grid.id).toBeGreaterThanOrEqual(-1e-9);
        expect(a.x + a.width, grid.id).toBeLessThanOrEqual(paper.width + 1e-9);
        expect(a.y + a.height, grid.id).toBeLessThanOrEqual(paper.height + 1e-9);
        for (const b of cells.slice(i + 1)) {
          const apart = b.x >= a.x + a.width - 1e-9 || b.y >= a.y + a.height - 1e-9 || b.x + b.width <= a.x + 1e-9;
          expect(apart, grid.id).toBe(true);
        }
      }
    }
  });

  it('of 3 × 7 labels on A4 begin 7.25 mm from the left and 15.15 mm from the top, by hand', () => {
    // (210 − 3 × 63.5 − 2 × 2.5) / 2 and (297 − 7 × 38.1) / 2.
    const grid = labelGrid('a4-3x7');
    expect(labelCell(grid, 0)).toMatchObject({ x: expect.closeTo(7.25, 6), y: expect.closeTo(15.15, 6) });
    expect(labelCell(grid, 4)).toMatchObject({ x: expect.closeTo(7.25 + 66, 6), y: expect.closeTo(15.15 + 38.1, 6) });
  });

  it('take one sheet more when a part-used one leaves too little room', () => {
    const grid = labelGrid('a4-3x7');
    expect([labelSheets(grid, 21, 1), labelSheets(grid, 21, 2), labelSheets(grid, 4, 18), labelSheets(grid, 0, 1)]).toEqual([
      1, 2, 1, 0,
    ]);
  });
});

it('letters an inch high are legible from 30 feet', () => {
  expect(legibleFromM(25.4)).toBeCloseTo(9.144, 9);
});
