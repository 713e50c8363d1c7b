/** Scouting sheets: a page or two for each field and insect, to be written on with a pencil in a field. */
import { type Language, PAPER_MM, type ScoutingSheet } from '@duskwatch/core';
import { bytesOf, measureBy, newPdf, pt } from './pdf.ts';
import { ScoutingPage } from './scouting-page.ts';
import { sheetText } from './scouting-text.ts';

export interface SheetOptions {
  readonly paper: keyof typeof PAPER_MM;
  readonly language: Language;
}

export async function scoutingPdf(sheets: readonly ScoutingSheet[], { paper, language }: SheetOptions): Promise<Buffer> {
  const size = PAPER_MM[paper];
  const texts =
    sheets.length === 0
      ? [sheetText(null, language, 1, 1)]
      : sheets.map((sheet, i) => sheetText(sheet, language, i + 1, sheets.length));
  const pdf = newPdf(texts[0]!.title);
  const measure = measureBy(newPdf('').addPage());
  for (const text of texts) {
    await othersTurn();
    for (let from: number | null = 0; from !== null; ) {
      pdf.addPage({ size: [pt(size.width), pt(size.height)], margin: 0 });
      from = new ScoutingPage(pdf, size, measure).draw(text, from);
    }
  }
  return bytesOf(pdf);
}

/** Between two sheets the server answers others. */
const othersTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
