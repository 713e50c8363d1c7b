import { LABEL_GRIDS, type LabelGridId, labelCell, labelGrid, labelsPerSheet, PAPER_MM, type TrapRecord } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { checkAddress, type LabelRequest, labelSummary, labelsPdf, layLabels } from './labels.ts';
import { rendered } from './rendered.testing.ts';

const trap = (trapId: string, change: Partial<TrapRecord> = {}): TrapRecord => ({
  trapId,
  station: 'Gatepost 2',
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  latitude: null,
  longitude: null,
  hungOn: '2026-07-01',
  takenDownOn: null,
  informs: [],
  ...change,
});

/** What people call traps, and what nobody should. */
const TRAPS = [
  trap('CR2-MC-26'),
  trap('7', { insect: 'ostrinia-nubilalis', design: 'delta' }),
  trap('W'.repeat(64)),
  trap(`"north" & <b>'trap'`, { insect: 'spodoptera-frugiperda', design: 'bucket' }),
  trap('🦋🦋 Ñandú', { insect: 'melittia-cucurbitae', design: 'wire-cone' }),
  trap('TRAP 0017 NORTH FIELD EAST', { insect: 'a-moth-with-a-long-name-that-nobody-has-described-yet' }),
];

const request = (grid: LabelGridId, change: Partial<LabelRequest> = {}): LabelRequest => ({
  traps: TRAPS,
  grid,
  startAt: 1,
  language: 'en',
  length: 'm',
  contact: 'Ida Brook, +1 555 0100, ida@moths.example',
  programName: 'Vale trap network',
  invented: true,
  origin: 'https://moths.example',
  outlines: false,
  ...change,
});

const apart = (a: { x: number; y: number; width: number; height: number }, b: typeof a) =>
  a.x + a.width <= b.x + 1e-6 || b.x + b.width <= a.x + 1e-6 || a.y + a.height <= b.y + 1e-6 || b.y + b.height <= a.y + 1e-6;

describe('labels', () => {
  it.each(LABEL_GRIDS.map(({ id }) => id))('on %s keep every line and code in its own place, a margin inside the label', (id) => {
    for (const language of ['en', 'es'] as const) {
      for (const { layout, cell, trap: of } of layLabels(request(id, { language }))) {
        const boxes = [...layout.code, ...layout.lines].map(({ box }) => box);
        if (layout.qr) boxes.push(layout.qr.box);
        for (const [index, box] of boxes.entries()) {
          expect(box.x, of.trapId).toBeGreaterThanOrEqual(cell.x + 1.99);
          expect(box.y, of.trapId).toBeGreaterThanOrEqual(cell.y + 1.99);
          expect(box.x + box.width, of.trapId).toBeLessThanOrEqual(cell.x + cell.width - 1.99);
          expect(box.y + box.height, of.trapId).toBeLessThanOrEqual(cell.y + cell.height - 1.99);
          for (const other of boxes.slice(index + 1)) expect(apart(box, other), of.trapId).toBe(true);
        }
      }
    }
  });

  it.each(['a4-3x7', 'a4-3x8', 'a4-2x4', 'letter-3x10', 'letter-2x5'] as const)(
    'on %s are read back from the printed page, and no ink touches a label’s edge',
    async (id) => {
      const grid = labelGrid(id);
      const startAt = labelsPerSheet(grid) - 2;
      const pages = await rendered(await labelsPdf(request(id, { startAt })));
      expect(pages).toHaveLength(2);
      const paper = PAPER_MM[grid.paper];
      expect([pages[0]!.widthMm, pages[0]!.heightMm]).toEqual([expect.closeTo(paper.width, 1), expect.closeTo(paper.height, 1)]);
      const read: (string | null)[] = [];
      for (const { sheet, cell } of layLabels(request(id, { startAt }))) {
        const page = pages[sheet]!;
        read.push(page.qrIn(cell));
        expect(page.ink(cell)).toBeGreaterThan(0.02);
        for (const edge of edgesOf(cell)) expect(page.ink(edge)).toBe(0);
      }
      expect(read).toEqual(TRAPS.map(({ trapId }) => checkAddress('https://moths.example', trapId)));
      // The part of the sheet that was used before stays clean.
      expect(pages[0]!.ink(labelCell(grid, 0))).toBe(0);
    },
    60_000,
  );

  it('say in words which insect, how high, and whom to ask, in the language asked for', async () => {
    const [page] = await rendered(await labelsPdf(request('a4-2x4', { traps: TRAPS.slice(0, 2), language: 'es' })));
    const text = page!.text.replace(/\s+/g, ' ');
    expect(text).toContain('CR2-MC-26');
    expect(text).toContain('gusano elotero');
    expect(text).toContain('mantener la abertura a 0,6 m');
    expect(text).toContain('Preguntas: Ida Brook, +1 555 0100');
    // The catalogue knows no height for a delta trap: a place to write it, no figure.
    expect(text).toContain('mantener la abertura a ______');
    const [feet] = await rendered(await labelsPdf(request('letter-2x3', { traps: TRAPS.slice(0, 1), length: 'ft' })));
    expect(feet!.text.replace(/\s+/g, ' ')).toContain('keep opening at 2 ft');
  });

  it('are told before they are printed: letters of 7 mm and more are read from 2.5 m, and what could not be printed is named', async () => {
    const short = await labelSummary(request('a4-3x7', { traps: [trap('CR2-MC-26')] }));
    const [height] = short.letterHeightMm!;
    expect(height).toBeGreaterThan(7);
    expect(short.legibleFromM![0]).toBeCloseTo(height * 0.36, 9);
    expect(short).toMatchObject({ labels: 1, sheets: 1, withoutCode: [], replacedLetters: [] });
    // An address of 500 characters in a square of 15 mm: no phone reads that.
    const hopeless = trap('🦋'.repeat(40));
    const told = await labelSummary(request('a4-3x8', { traps: [hopeless] }));
    expect(told).toMatchObject({ withoutCode: [hopeless.trapId], replacedLetters: [hopeless.trapId] });
    const [page] = await rendered(await labelsPdf(request('a4-3x8', { traps: [hopeless] })));
    expect(page!.text.replace(/\s+/g, ' ')).toContain('Name too long for a code on this label');
  });

  it('stand where their outlines say, on a trial print', async () => {
    const grid = labelGrid('a4-3x7');
    const [page] = await rendered(await labelsPdf(request('a4-3x7', { outlines: true })));
    const { x, y, width, height } = labelCell(grid, 20);
    for (const [atX, atY] of [
      [x, y + height / 2],
      [x + width, y + height / 2],
      [x + width / 2, y + height],
    ] as const)
      expect(page!.ink({ x: atX - 0.3, y: atY - 0.3, width: 0.6, height: 0.6 })).toBeGreaterThan(0.05);
  });
});

/** A millimetre along each side, within the label. */
const edgesOf = ({ x, y, width, height }: ReturnType<typeof labelCell>) => [
  { x, y, width, height: 1 },
  { x, y: y + height - 1, width, height: 1 },
  { x, y, width: 1, height },
  { x: x + width - 1, y, width: 1, height },
];
