/** Sheets of labels, named by their geometry alone. */
import type { Sourced } from '../catalogue/types.ts';

export interface LabelGrid extends Sourced {
  readonly id: LabelGridId;
  readonly paper: 'A4' | 'Letter';
  readonly columns: number;
  readonly rows: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Between neighbouring labels. */
  readonly gapXMm: number;
  readonly gapYMm: number;
}

/** A rectangle on a sheet, in millimetres from its top left corner. */
export interface SheetBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** ISO 216; ANSI/ASME Y14.1, from memory. */
export const PAPER_MM = { A4: { width: 210, height: 297 }, Letter: { width: 215.9, height: 279.4 } } as const;

const MEMORY = {
  source: 'common practice, no source',
  standing: 'memory',
  note: {
    en: 'Sheets differ by a millimetre or so: hold a trial print on plain paper against yours.',
    es: 'Las hojas difieren en un milímetro o así: compare una prueba en papel común con las suyas.',
  },
} as const satisfies Sourced;

const INCH = 25.4;

export const LABEL_GRID_IDS = [
  'a4-1x2',
  'a4-2x2',
  'a4-2x4',
  'a4-2x7',
  'a4-3x7',
  'a4-3x8',
  'letter-1x2',
  'letter-2x3',
  'letter-2x5',
  'letter-3x10',
] as const;
export type LabelGridId = (typeof LABEL_GRID_IDS)[number];

/** Millimetres; the grid stands in the middle of its sheet. */
export const LABEL_GRIDS: readonly LabelGrid[] = [
  a4('a4-1x2', 1, 2, 210, 148.5),
  a4('a4-2x2', 2, 2, 105, 148.5),
  a4('a4-2x4', 2, 4, 99.1, 67.7, 2.5),
  a4('a4-2x7', 2, 7, 99.1, 38.1, 2.5),
  a4('a4-3x7', 3, 7, 63.5, 38.1, 2.5),
  a4('a4-3x8', 3, 8, 70, 37),
  letter('letter-1x2', 1, 2, 8.5, 5.5),
  letter('letter-2x3', 2, 3, 4, 10 / 3, 3 / 16),
  letter('letter-2x5', 2, 5, 4, 2, 3 / 16),
  letter('letter-3x10', 3, 10, 2.625, 1, 1 / 8),
];

function a4(id: LabelGridId, columns: number, rows: number, widthMm: number, heightMm: number, gapXMm = 0): LabelGrid {
  return { id, paper: 'A4', columns, rows, widthMm, heightMm, gapXMm, gapYMm: 0, ...MEMORY };
}

/** US sheets are measured in inches. */
function letter(id: LabelGridId, columns: number, rows: number, width: number, height: number, gapX = 0): LabelGrid {
  const [widthMm, heightMm, gapXMm] = [width * INCH, height * INCH, gapX * INCH];
  return { id, paper: 'Letter', columns, rows, widthMm, heightMm, gapXMm, gapYMm: 0, ...MEMORY };
}

export const labelGrid = (id: LabelGridId): LabelGrid => LABEL_GRIDS.find((grid) => grid.id === id)!;

export const labelsPerSheet = ({ columns, rows }: LabelGrid): number => columns * rows;

/** Label `index` of a sheet, counted from 0 along the rows. */
export function labelCell(grid: LabelGrid, index: number): SheetBox {
  const { columns, rows, widthMm, heightMm, gapXMm, gapYMm } = grid;
  const paper = PAPER_MM[grid.paper];
  const left = (paper.width - columns * widthMm - (columns - 1) * gapXMm) / 2;
  const top = (paper.height - rows * heightMm - (rows - 1) * gapYMm) / 2;
  const column = index % columns;
  const row = Math.floor(index / columns);
  return { x: left + column * (widthMm + gapXMm), y: top + row * (heightMm + gapYMm), width: widthMm, height: heightMm };
}

/** Sheets for `count` labels when the first sheet begins at label `startAt`, counted from 1. */
export const labelSheets = (grid: LabelGrid, count: number, startAt: number): number =>
  Math.ceil((startAt - 1 + count) / labelsPerSheet(grid));
