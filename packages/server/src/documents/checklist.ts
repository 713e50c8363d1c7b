/** Printed checklists for hanging each design. */
import { PAPER_MM } from '@duskwatch/core';
import { type Checklist, type ChecklistRequest, checklistOf } from './checklist-content.ts';
import {
  bytesOf,
  CAP_HEIGHT,
  drawLine,
  type Font,
  type Measure,
  measureBy,
  newPdf,
  type Pdf,
  printable,
  pt,
  strokeBox,
  wrap,
} from './pdf.ts';

export type { ChecklistRequest } from './checklist-content.ts';

const MARGIN = 18;
const BOX = 3.6;
const INDENT = 7;
const BODY = 3.3;
const SMALL = 2.6;
const LINE = 1.26;

/** One checklist after another, each on a page of its own. */
export async function checklistsPdf(requests: readonly ChecklistRequest[]): Promise<Buffer> {
  const first = requests[0];
  const pdf = newPdf(first ? checklistOf(first).title : 'Duskwatch');
  for (const request of requests) new Sheet(pdf, request).draw(checklistOf(request));
  return bytesOf(pdf);
}

class Sheet {
  private y = MARGIN;
  private page = 0;
  private readonly pdf: Pdf;
  private readonly paper: { readonly width: number; readonly height: number };
  private readonly measure: Measure;
  private readonly request: ChecklistRequest;

  constructor(pdf: Pdf, request: ChecklistRequest) {
    this.pdf = pdf;
    this.request = request;
    this.paper = PAPER_MM[request.paper];
    this.turnPage();
    this.measure = measureBy(pdf);
  }

  draw(list: Checklist): void {
    this.text(list.title, 'Helvetica-Bold', 6, MARGIN);
    this.text(list.program, 'Helvetica', BODY, MARGIN);
    this.y += 3;
    this.blanks(list.blanks);
    for (const { title, isCaution, items } of list.sections) {
      if (items.length === 0) continue;
      this.y += 3;
      this.need(4 * BODY * LINE);
      const top = this.y;
      this.text(title, 'Helvetica-Bold', 4.4, MARGIN);
      for (const { text, source } of items) this.item(text, source);
      if (isCaution) this.bar(top);
    }
    this.y += 4;
    this.text(list.foot, 'Helvetica-Bold', BODY, MARGIN);
    this.y += 2;
    this.text(list.sourcesTitle, 'Helvetica-Bold', SMALL, MARGIN);
    for (const [index, source] of list.sources.entries()) this.text(`[${index + 1}] ${source}`, 'Helvetica', SMALL, MARGIN);
  }

  private get right(): number {
    return this.paper.width - MARGIN;
  }

  private blanks(names: readonly string[]): void {
    const each = (this.right - MARGIN) / names.length;
    this.y += 5;
    for (const [index, name] of names.entries()) {
      const x = MARGIN + index * each;
      const from = x + this.measure(name, 'Helvetica', BODY) + 2;
      drawLine(this.pdf, printable(name), 'Helvetica', BODY, x, this.y);
      this.pdf
        .lineWidth(pt(0.2))
        .moveTo(pt(from), pt(this.y))
        .lineTo(pt(x + each - 3), pt(this.y))
        .stroke();
    }
    this.y += 2;
  }

  private item(text: string, source: number | null): void {
    const said = source === null ? text : `${text} [${source}]`;
    const lines = wrap(printable(said), 'Helvetica', BODY, this.right - MARGIN - INDENT, this.measure);
    this.need(lines.length * BODY * LINE + 1);
    strokeBox(this.pdf, { x: MARGIN, y: this.y + (BODY * CAP_HEIGHT - BOX) / 2 + 0.6, width: BOX, height: BOX }, 0.25);
    for (const line of lines) this.line(line, 'Helvetica', BODY, MARGIN + INDENT);
    this.y += 0.55;
  }

  private text(text: string, font: Font, sizeMm: number, x: number): void {
    for (const line of wrap(printable(text), font, sizeMm, this.right - x, this.measure)) this.line(line, font, sizeMm, x);
  }

  private line(text: string, font: Font, sizeMm: number, x: number): void {
    this.need(sizeMm * LINE);
    drawLine(this.pdf, text, font, sizeMm, x, this.y + sizeMm * CAP_HEIGHT + 0.6);
    this.y += sizeMm * LINE;
  }

  /** A thick bar beside what can hurt somebody. */
  private bar(from: number): void {
    if (from > this.y) return;
    this.pdf.rect(pt(MARGIN - 5), pt(from), pt(1.6), pt(this.y - from)).fill('black');
  }

  private need(height: number): void {
    if (this.y + height > this.paper.height - MARGIN) this.turnPage();
  }

  private turnPage(): void {
    this.pdf.addPage({ size: [pt(this.paper.width), pt(this.paper.height)], margin: 0 });
    this.page++;
    this.y = MARGIN;
    if (this.page === 1) return;
    drawLine(this.pdf, `${printable(checklistOf(this.request).title)}, ${this.page}`, 'Helvetica', SMALL, MARGIN, MARGIN - 6);
  }
}
