import { CAP_HEIGHT, drawLine, type Font, type Measure, type Pdf, printable, pt, strokeBox, wrap } from './pdf.ts';
import type { SheetRow, SheetText } from './scouting-text.ts';

const MARGIN = 13;
const GAP = 6;
/** Text is read at arm's length, outdoors. */
const BODY = 3.3;
const SMALL = 2.7;
const LEADING = 1.32;
/** A pencil needs so much; a hand no more than the upper bound. */
const ROW_MM = [4.4, 9] as const;
/** Wide enough for a number of two digits. */
const BOX_MM = 8;
const COLUMN_MM = { place: 17, samples: 15, total: 21, stop: 20 } as const;

/** One page, drawn from the top down; the table takes what the texts leave, and goes on overleaf where that is too little. */
export class ScoutingPage {
  private y = MARGIN;
  private readonly pdf: Pdf;
  private readonly paper: { readonly width: number; readonly height: number };
  private readonly measure: Measure;

  constructor(pdf: Pdf, paper: { readonly width: number; readonly height: number }, measure: Measure) {
    this.pdf = pdf;
    this.paper = paper;
    this.measure = measure;
  }

  private get width(): number {
    return this.paper.width - 2 * MARGIN;
  }

  /**
   * @param from first row of the table on this page; the texts above it are on the first page alone
   * @returns first row that is left for the next page, or null
   */
  draw(text: SheetText, from = 0): number | null {
    this.heading(text);
    if (text.rows.length === 0) return null;
    if (from === 0) {
      this.blanks(text.blanks);
      this.columns(text);
    }
    const foot = this.footHeight(text);
    const header = 9;
    const free = this.paper.height - MARGIN - this.y - header;
    const left = text.rows.length - from;
    if ((free - foot) / left < ROW_MM[0]) {
      const to = from + Math.min(left - 1, Math.floor(free / ROW_MM[0]));
      this.table({ ...text, rows: text.rows.slice(from, to) }, ROW_MM[0], header);
      return to;
    }
    const row = Math.min(ROW_MM[1], (free - foot) / left);
    this.table({ ...text, rows: text.rows.slice(from) }, row, header);
    this.foot(text, this.paper.height - MARGIN - foot);
    return null;
  }

  private heading({ title, program, heading, subject, species, facts, page }: SheetText): void {
    this.write(title.toUpperCase(), 'Helvetica-Bold', SMALL, MARGIN, this.y + SMALL);
    const right = printable([program, page].filter(Boolean).join('  ·  '));
    this.write(right, 'Helvetica', SMALL, this.paper.width - MARGIN - this.measure(right, 'Helvetica', SMALL), this.y + SMALL);
    this.y += SMALL + 4;
    this.line(heading, 'Helvetica-Bold', 6, MARGIN, this.width);
    if (subject !== '') {
      const at = this.y + CAP_HEIGHT * 4.6;
      this.write(subject, 'Helvetica-Bold', 4.6, MARGIN, at);
      const end = MARGIN + this.measure(printable(subject), 'Helvetica-Bold', 4.6) + 3;
      this.write(species, 'Helvetica-Oblique', 4, end, at);
      this.y += 4.6 * LEADING;
    }
    for (const each of facts) this.line(each, 'Helvetica', BODY, MARGIN, this.width);
    this.y += 2.5;
  }

  /** Names of what is written by hand, each with a line to write on. */
  private blanks(names: readonly string[]): void {
    const widths = [0.19, 0.23, 0.19, 0.19, 0.2];
    let x = MARGIN;
    for (const [i, name] of names.entries()) {
      const width = this.width * widths[i]!;
      this.write(name, 'Helvetica', SMALL, x, this.y + CAP_HEIGHT * SMALL);
      this.rule(x, this.y + 10.5, width - 3);
      x += width;
    }
    this.y += 14;
  }

  private columns({ look, walk, cautions, when }: SheetText): void {
    const width = (this.width - GAP) / 2;
    const top = this.y;
    this.line(look.title, 'Helvetica-Bold', 3.9, MARGIN, width);
    for (const each of look.lines) this.line(each, 'Helvetica', BODY, MARGIN, width);
    this.y += 1.5;
    this.line(cautions.title, 'Helvetica-Bold', 3.9, MARGIN, width);
    for (const each of cautions.urgent) this.line(each, 'Helvetica-Bold', BODY, MARGIN, width);
    for (const each of cautions.lines) this.line(each, 'Helvetica', BODY, MARGIN, width);
    const left = this.y;
    this.y = top;
    const x = MARGIN + width + GAP;
    this.line(walk.title, 'Helvetica-Bold', 3.9, x, width);
    for (const [i, step] of walk.steps.entries()) {
      this.write(`${i + 1}`, 'Helvetica-Bold', BODY, x, this.y + CAP_HEIGHT * BODY);
      this.line(step, 'Helvetica', BODY, x + 4.5, width - 4.5);
      this.y += 0.6;
    }
    this.y += 0.9;
    this.line(when.title, 'Helvetica-Bold', 3.9, x, width);
    for (const each of when.lines) this.line(each, 'Helvetica', BODY, x, width);
    this.y = Math.max(left, this.y) + 2;
  }

  private table({ columns, rows }: SheetText, row: number, header: number): void {
    const { place, samples, total, stop } = COLUMN_MM;
    const tally = this.width - place - samples - total - 2 * stop;
    const edges: number[] = [];
    let x = MARGIN;
    for (const width of [place, tally, samples, total, stop, stop, 0]) {
      edges.push(x);
      x += width;
    }
    for (const [i, name] of columns.entries()) {
      const lines = wrap(printable(name), 'Helvetica-Bold', SMALL, edges[i + 1]! - edges[i]! - 1.5, this.measure).slice(0, 2);
      const first = this.y + header - 1.6 - (lines.length - 1) * SMALL * 1.15;
      for (const [n, each] of lines.entries())
        this.write(each, 'Helvetica-Bold', SMALL, edges[i]! + (i === 0 ? 0 : 1), first + n * SMALL * 1.15);
    }
    this.y += header;
    for (const each of rows) this.row(each, row, edges, tally);
    this.rule(MARGIN, this.y, this.width, 0.25);
  }

  private row(each: SheetRow, height: number, edges: readonly number[], tally: number): void {
    this.rule(MARGIN, this.y, this.width, each.lap ? 0.35 : 0.12);
    const base = this.y + height / 2 + (CAP_HEIGHT * BODY) / 2;
    if (each.lap) this.write(each.lap, 'Helvetica', SMALL, MARGIN, base);
    this.write(each.place, 'Helvetica-Bold', BODY, edges[1]! - 5, base);
    const width = Math.min(BOX_MM, (tally - 3) / each.boxes - 0.7);
    for (let i = 0; i < each.boxes; i++) {
      strokeBox(this.pdf, { x: edges[1]! + 1 + i * (width + 0.7), y: this.y + 0.8, width, height: height - 1.6 }, 0.15);
    }
    this.centred(each.samples, 'Helvetica', edges[2]!, edges[3]!, base);
    this.rule(edges[3]! + 3, this.y + height - 1.4, edges[4]! - edges[3]! - 6);
    this.centred(each.below, 'Helvetica-Bold', edges[4]!, edges[5]!, base);
    this.centred(each.above, 'Helvetica-Bold', edges[5]!, edges[6]!, base);
    this.y += height;
  }

  private footHeight({ foot }: SheetText): number {
    const lines = foot.flatMap((each) => wrap(printable(each), 'Helvetica', SMALL, this.width, this.measure));
    return 10 + lines.length * SMALL * LEADING;
  }

  private foot({ result, foot }: SheetText, top: number): void {
    this.y = Math.max(this.y + 2, top);
    const base = this.y + 4;
    let x = MARGIN;
    if (result.choices.length > 0) this.write(result.title, 'Helvetica-Bold', BODY, x, base);
    x += this.measure(printable(result.title), 'Helvetica-Bold', BODY) + 6;
    for (const choice of result.choices) {
      strokeBox(this.pdf, { x, y: base - 3.4, width: 4, height: 4 }, 0.2);
      this.write(choice, 'Helvetica', BODY, x + 5.5, base);
      x += this.measure(printable(choice), 'Helvetica', BODY) + 12;
    }
    this.y = base + 4;
    for (const each of foot) this.line(each, 'Helvetica', SMALL, MARGIN, this.width);
  }

  private line(text: string, font: Font, size: number, x: number, width: number): void {
    for (const each of wrap(printable(text), font, size, width, this.measure)) {
      drawLine(this.pdf, each, font, size, x, this.y + CAP_HEIGHT * size);
      this.y += size * LEADING;
    }
  }

  private write(text: string, font: Font, size: number, x: number, y: number): void {
    drawLine(this.pdf, printable(text), font, size, x, y);
  }

  private centred(text: string, font: Font, from: number, to: number, y: number): void {
    this.write(text, font, BODY, (from + to - this.measure(printable(text), font, BODY)) / 2, y);
  }

  private rule(x: number, y: number, width: number, thick = 0.15): void {
    this.pdf
      .lineWidth(pt(thick))
      .moveTo(pt(x), pt(y))
      .lineTo(pt(x + width), pt(y))
      .stroke();
  }
}
