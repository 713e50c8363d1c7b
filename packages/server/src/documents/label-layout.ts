/** Where everything on one label goes: pure, in millimetres on the sheet. */
import type { SheetBox } from '@duskwatch/core';
import { CAP_HEIGHT, DESCENT, type Font, type Measure, printable, wrap } from './pdf.ts';
import { type QrCode, qrCode } from './qr.ts';

export interface LabelText {
  readonly code: string;
  /** Most important first: where there is no room for all, the last are left out. */
  readonly lines: readonly { readonly text: string; readonly font: Font }[];
  readonly url: string;
  /** Stands in the code's place when it does not fit. */
  readonly noCode: string;
}

export interface PlacedLine {
  readonly text: string;
  readonly font: Font;
  readonly sizeMm: number;
  /** From the top of its capitals to below its descenders. */
  readonly box: SheetBox;
}

export interface LabelLayout {
  readonly code: readonly PlacedLine[];
  readonly lines: readonly PlacedLine[];
  readonly qr: { readonly box: SheetBox; readonly code: QrCode } | null;
  /** Of the trap code. */
  readonly letterHeightMm: number;
}

/** Paper that printers cannot reach at a sheet's edge, and a finger's breadth less inside a label. */
const SHEET_EDGE_MM = 5;
const LEAST_PADDING_MM = 2;
/** The trap code's share of the height, and into how many lines it may be broken to be larger. */
const CODE_SHARE = 0.38;
/** On a lower label the code stands beside the square: over it, both would be too small. */
const LOW_LABEL_MM = 30;
/** An accent above a capital, as a share of the size. */
const ACCENT = 0.2;
const MOST_CODE_LINES = 3;
const GAP_MM = 1.5;
const LARGEST_TEXT_MM = 6;
/** About 5 points: smaller print is not read outdoors. Figure chosen by Duskwatch, no source. */
const SMALLEST_TEXT_MM = 1.75;
/** About 6 points, which is read at arm's length. Figure chosen by Duskwatch, no source. */
const COMFORTABLE_TEXT_MM = 2.1;
const KEPT_LINES = 4;
const LINE_HEIGHT = 1.22;

const paddingOf = (cell: SheetBox): number => Math.max(LEAST_PADDING_MM, SHEET_EDGE_MM - Math.max(0, Math.min(cell.x, cell.y)));

export function layLabel({ code, lines, url, noCode }: LabelText, cell: SheetBox, measure: Measure): LabelLayout {
  const padding = paddingOf(cell);
  const inner = {
    x: cell.x + padding,
    y: cell.y + padding,
    width: cell.width - 2 * padding,
    height: cell.height - 2 * padding,
  };
  const isLow = cell.height < LOW_LABEL_MM;
  const lowSide = Math.min(inner.height, inner.width * 0.4);
  const top = isLow ? { ...inner, x: inner.x + lowSide + GAP_MM, width: inner.width - lowSide - GAP_MM } : inner;
  const codeLines = layCode(printable(code), top, measure);
  const codeBottom = Math.max(...codeLines.map(({ box }) => box.y + box.height)) + GAP_MM;
  const rest = inner.y + inner.height - codeBottom;
  const side = isLow ? lowSide : Math.min(rest, inner.width * 0.45);
  const square = { x: inner.x, y: isLow ? inner.y + (inner.height - side) / 2 : codeBottom, width: side, height: side };
  const qr = qrCode(url, side);
  const beside = { x: inner.x + side + GAP_MM, y: codeBottom, width: inner.width - side - GAP_MM, height: rest };
  const missing = qr === null ? layText([{ text: noCode, font: 'Helvetica' }], square, measure) : [];
  return {
    code: codeLines,
    lines: [...layText(lines, beside, measure), ...missing],
    qr: qr && { box: square, code: qr },
    letterHeightMm: (codeLines[0]?.sizeMm ?? 0) * CAP_HEIGHT,
  };
}

/** The code in the number of lines that lets its letters be largest. */
function layCode(code: string, inner: SheetBox, measure: Measure): PlacedLine[] {
  const font = 'Helvetica-Bold';
  const room = inner.height * CODE_SHARE;
  let best: { lines: readonly string[]; sizeMm: number } | null = null;
  for (let n = 1; n <= Math.min(MOST_CODE_LINES, code.length); n++) {
    const lines = brokenCode(code, n);
    const widest = Math.max(...lines.map((line) => measure(line, font, 1)));
    const tall = room / (heightOf(lines.length) + accentOf(lines));
    const sizeMm = Math.min(tall, inner.width / widest);
    if (best === null || sizeMm > best.sizeMm * 1.15) best = { lines, sizeMm };
  }
  if (best === null) return [];
  const { lines, sizeMm } = best;
  const first = inner.y + accentOf(lines) * sizeMm;
  return lines.map((text, index) => placed(text, font, sizeMm, inner.x, first + index * sizeMm * LINE_HEIGHT, measure));
}

const accentOf = ([first = '']: readonly string[]): number => (/[À-ÖØ-Þ]/.test(first) ? ACCENT : 0);

/** A code in `n` parts of about one length, broken after a dash, dot or space where one is near. */
function brokenCode(code: string, n: number): string[] {
  const parts: string[] = [];
  let rest = code;
  for (let left = n; left > 1; left--) {
    const even = Math.ceil(rest.length / left);
    const near = [...rest.matchAll(/[-_. /]/g)]
      .map(({ index }) => index + 1)
      .filter((at) => Math.abs(at - even) <= even / 3 && at < rest.length)
      .sort((a, b) => Math.abs(a - even) - Math.abs(b - even))[0];
    const at = near ?? even;
    parts.push(rest.slice(0, at).trim());
    rest = rest.slice(at).trim();
  }
  return [...parts, rest].filter((part) => part !== '');
}

/**
 * As large as lets all lines stand in the box. Rather than print them small, the last lines are left out, down to the
 * first four; what the smallest print leaves no room for is cut.
 */
function layText(lines: LabelText['lines'], box: SheetBox, measure: Measure): PlacedLine[] {
  const known = lines.map(({ text, font }) => ({ text: printable(text), font })).filter(({ text }) => text.trim() !== '');
  for (let kept = known.length; kept > 0; kept--) {
    const smallest = kept > KEPT_LINES ? COMFORTABLE_TEXT_MM : SMALLEST_TEXT_MM;
    for (let sizeMm = LARGEST_TEXT_MM; sizeMm >= smallest; sizeMm *= 0.93) {
      const wrapped = wrapAll(known.slice(0, kept), sizeMm, box.width, measure);
      if (heightOf(wrapped.length) * sizeMm <= box.height) return stack(wrapped, sizeMm, box, measure);
    }
    if (kept <= KEPT_LINES) break;
  }
  const rows = Math.max(0, Math.floor((box.height / SMALLEST_TEXT_MM - CAP_HEIGHT - DESCENT) / LINE_HEIGHT) + 1);
  const cut = wrapAll(known.slice(0, KEPT_LINES), SMALLEST_TEXT_MM, box.width, measure).slice(0, rows);
  return stack(cut, SMALLEST_TEXT_MM, box, measure);
}

/** Of some lines, as a multiple of their size. */
const heightOf = (lines: number): number => (lines === 0 ? 0 : CAP_HEIGHT + DESCENT + (lines - 1) * LINE_HEIGHT);

const wrapAll = (lines: LabelText['lines'], sizeMm: number, width: number, measure: Measure): LabelText['lines'] =>
  lines.flatMap(({ text, font }) => wrap(text, font, sizeMm, width, measure).map((part) => ({ text: part, font })));

const stack = (lines: LabelText['lines'], sizeMm: number, box: SheetBox, measure: Measure): PlacedLine[] =>
  lines.map(({ text, font }, index) => placed(text, font, sizeMm, box.x, box.y + index * sizeMm * LINE_HEIGHT, measure));

function placed(text: string, font: Font, sizeMm: number, x: number, y: number, measure: Measure): PlacedLine {
  return { text, font, sizeMm, box: { x, y, width: measure(text, font, sizeMm), height: (CAP_HEIGHT + DESCENT) * sizeMm } };
}
