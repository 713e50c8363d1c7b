/** Sheets of trap labels. */
import {
  designFacts,
  english,
  fromMetres,
  insectById,
  type LabelGridId,
  type Language,
  type LengthUnit,
  labelCell,
  labelGrid,
  labelSheets,
  labelsPerSheet,
  legibleFromM,
  PAPER_MM,
  type SheetBox,
  spanish,
  type TrapRecord,
} from '@duskwatch/core';
import { type LabelLayout, type LabelText, layLabel, type PlacedLine } from './label-layout.ts';
import { labelWords } from './label-words.ts';
import { bytesOf, CAP_HEIGHT, drawLine, measureBy, newPdf, type Pdf, printable, pt, strokeBox } from './pdf.ts';
import { type QrCode, QUIET_SQUARES } from './qr.ts';

export interface LabelRequest {
  readonly traps: readonly TrapRecord[];
  readonly grid: LabelGridId;
  /** First label to print on, counted from 1 along the rows: a part-used sheet is used up. */
  readonly startAt: number;
  readonly language: Language;
  readonly length: LengthUnit;
  /** How to reach the coordinator; empty: left out. */
  readonly contact: string;
  readonly programName: string;
  readonly invented: boolean;
  /** Where the app is reached: `https://moths.example`. */
  readonly origin: string;
  /** Draws the edges of the labels, for a trial print on plain paper. */
  readonly outlines: boolean;
}

/** What will be on the sheets, before anybody prints them. */
export interface LabelSummary {
  readonly labels: number;
  readonly sheets: number;
  /** Of the trap codes: the smallest and the largest; null without labels. */
  readonly letterHeightMm: [number, number] | null;
  readonly legibleFromM: [number, number] | null;
  /** Traps whose address is too long for a code that a phone can read at this size. */
  readonly withoutCode: string[];
  /** Traps whose code has letters that the built-in font lacks: `?` stands in their place. */
  readonly replacedLetters: string[];
}

interface PlacedLabel {
  readonly trap: TrapRecord;
  readonly sheet: number;
  readonly cell: SheetBox;
  readonly layout: LabelLayout;
}

/** The address that a label's code holds. */
export const checkAddress = (origin: string, trapId: string): string => `${origin}/round?trap=${encodeURIComponent(trapId)}`;

export function* layLabels(request: LabelRequest): Generator<PlacedLabel> {
  const measure = measureBy(newPdf('').addPage());
  const grid = labelGrid(request.grid);
  const perSheet = labelsPerSheet(grid);
  for (const [index, trap] of request.traps.entries()) {
    const at = request.startAt - 1 + index;
    const cell = labelCell(grid, at % perSheet);
    yield { trap, sheet: Math.floor(at / perSheet), cell, layout: layLabel(textOf(trap, request), cell, measure) };
  }
}

export async function labelSummary(request: LabelRequest): Promise<LabelSummary> {
  const heights: number[] = [];
  const withoutCode: string[] = [];
  let sheet = -1;
  for (const { trap, sheet: on, layout } of layLabels(request)) {
    if (on !== sheet) await othersTurn();
    sheet = on;
    heights.push(layout.letterHeightMm);
    if (layout.qr === null) withoutCode.push(trap.trapId);
  }
  const range: [number, number] | null = heights.length === 0 ? null : [Math.min(...heights), Math.max(...heights)];
  return {
    labels: heights.length,
    sheets: heights.length === 0 ? 0 : labelSheets(labelGrid(request.grid), heights.length, request.startAt),
    letterHeightMm: range,
    legibleFromM: range && [legibleFromM(range[0]), legibleFromM(range[1])],
    withoutCode,
    replacedLetters: request.traps.map(({ trapId }) => trapId).filter((id) => printable(id) !== id.normalize('NFC')),
  };
}

export async function labelsPdf(request: LabelRequest): Promise<Buffer> {
  const pdf = newPdf(`${labelWords[request.language].title}: ${printable(request.programName)}`);
  const grid = labelGrid(request.grid);
  const paper = PAPER_MM[grid.paper];
  let sheet = -1;
  for (const { sheet: on, layout } of layLabels(request)) {
    for (; sheet < on; sheet++) {
      await othersTurn();
      pdf.addPage({ size: [pt(paper.width), pt(paper.height)], margin: 0 });
      if (request.outlines) for (let i = 0; i < labelsPerSheet(grid); i++) strokeBox(pdf, labelCell(grid, i));
    }
    for (const line of [...layout.code, ...layout.lines]) drawPlaced(pdf, line);
    if (layout.qr) drawQr(pdf, layout.qr.code, layout.qr.box);
  }
  return bytesOf(pdf);
}

/** A sheet takes a tenth of a second, in which a server answers nobody. */
const othersTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

function textOf(trap: TrapRecord, request: LabelRequest): LabelText {
  const { language, contact, programName, invented } = request;
  const w = labelWords[language];
  const wording = (language === 'es' ? spanish : english)({ temperature: 'C' });
  const insect = insectById(trap.insect);
  const lines: LabelText['lines'] = [
    { text: insect?.commonName[language] ?? trap.insect.replaceAll('-', ' '), font: 'Helvetica-Bold' },
    { text: `${wording.design[trap.design]}, ${openingText(trap, request)}`, font: 'Helvetica' },
    { text: contact.trim() === '' ? '' : w.contact(contact.trim()), font: 'Helvetica' },
    { text: `${programName}${invented ? ` (${w.invented})` : ''}`, font: 'Helvetica' },
    { text: trap.station === trap.trapId ? '' : w.station(trap.station), font: 'Helvetica' },
    { text: insect?.scientificName ?? '', font: 'Helvetica-Oblique' },
  ];
  return { code: trap.trapId, lines, url: checkAddress(request.origin, trap.trapId), noCode: w.noCode };
}

function openingText({ design }: TrapRecord, { language, length }: LabelRequest): string {
  const w = labelWords[language];
  const heightM = designFacts(design)?.heightM ?? null;
  if (heightM === null) return w.openingUnknown;
  const digits = length === 'm' ? 1 : 0;
  const figure = fromMetres(heightM, length).toLocaleString(language, { maximumFractionDigits: digits });
  return w.opening(`${figure} ${length === 'ft' && language === 'es' ? 'pies' : length}`);
}

function drawPlaced(pdf: Pdf, { text, font, sizeMm, box }: PlacedLine): void {
  drawLine(pdf, text, font, sizeMm, box.x, box.y + CAP_HEIGHT * sizeMm);
}

/** Each row's runs of dark squares as one shape: hairlines between squares would disturb a reader. */
function drawQr(pdf: Pdf, code: QrCode, box: SheetBox): void {
  const square = box.width / (code.size + 2 * QUIET_SQUARES);
  const at = (index: number) => (index + QUIET_SQUARES) * square;
  for (let row = 0; row < code.size; row++) {
    for (let from = 0; from < code.size; from++) {
      if (!code.isDark(row, from)) continue;
      let to = from;
      while (to < code.size && code.isDark(row, to)) to++;
      pdf.rect(pt(box.x + at(from)), pt(box.y + at(row)), pt((to - from) * square), pt(square));
      from = to;
    }
  }
  pdf.fill('black');
}
