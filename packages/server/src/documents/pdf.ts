/** What every printed document shares. Lengths are millimetres until here. */
import type { SheetBox } from '@duskwatch/core';
import PDFDocument from 'pdfkit';

export type Pdf = PDFKit.PDFDocument;
export type Font = 'Helvetica' | 'Helvetica-Bold' | 'Helvetica-Oblique';

const POINTS_PER_MM = 72 / 25.4;
export const pt = (mm: number): number => mm * POINTS_PER_MM;

/** Of Helvetica: height of capitals and depth of descenders as shares of the size (Adobe's font metrics, Helvetica-Bold.afm). */
export const CAP_HEIGHT = 0.718;
export const DESCENT = 0.207;

/** A document without pages whose pages have no margins of their own. */
export function newPdf(title: string): Pdf {
  return new PDFDocument({ autoFirstPage: false, margin: 0, info: { Title: title, Creator: 'Duskwatch' } });
}

export function bytesOf(pdf: Pdf): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => resolve(Buffer.concat(parts)));
    pdf.on('error', reject);
    pdf.end();
  });
}

/** Width in millimetres of a text at a size in millimetres. */
export type Measure = (text: string, font: Font, sizeMm: number) => number;

/** Measures each text once: widths grow with the size. */
export function measureBy(pdf: Pdf): Measure {
  const known = new Map<string, number>();
  return (text, font, sizeMm) => {
    const key = `${font} ${text}`;
    let width = known.get(key);
    if (width === undefined) {
      width = pdf.font(font).fontSize(1_000).widthOfString(text) / 1_000;
      known.set(key, width);
    }
    return width * sizeMm;
  };
}

/** One line of text, its baseline at `y`. */
export function drawLine(pdf: Pdf, text: string, font: Font, sizeMm: number, x: number, y: number): void {
  pdf.font(font).fontSize(pt(sizeMm)).text(text, pt(x), pt(y), { lineBreak: false, baseline: 'alphabetic' });
}

export function strokeBox(pdf: Pdf, { x, y, width, height }: SheetBox, widthMm = 0.1): void {
  pdf.lineWidth(pt(widthMm)).rect(pt(x), pt(y), pt(width), pt(height)).stroke();
}

/** Letters above Latin-1 that the built-in fonts have (PDF 32000-1, annex D.2). */
const EXTRA = new Set('€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ');

/** What the built-in fonts can print of a text: letters they lack become `?`, line breaks spaces. */
export function printable(text: string): string {
  const has = (letter: string) => {
    const code = letter.codePointAt(0)!;
    return (code >= 0x20 && code < 0x7f) || (code >= 0xa0 && code <= 0xff) || EXTRA.has(letter);
  };
  return [...text.normalize('NFC').replace(/\s/g, ' ')].map((letter) => (has(letter) ? letter : '?')).join('');
}

/** Words in lines no wider than `widthMm`; a word that is wider by itself is broken. */
export function wrap(text: string, font: Font, sizeMm: number, widthMm: number, measure: Measure): string[] {
  const fits = (line: string) => measure(line, font, sizeMm) <= widthMm;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (line !== '' && !fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
  }
  return line === '' ? lines : [...lines, line];
}
