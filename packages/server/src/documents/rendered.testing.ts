/** PDF pages as a printer would see them, by PDFium. */
import type { SheetBox } from '@duskwatch/core';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import readQr from 'jsqr';

/** 12 dots to the millimetre, about 300 to the inch. */
const DOTS_PER_MM = 12;

export interface RenderedPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly text: string;
  /** Share of dots in a box that are not white. */
  readonly ink: (box: SheetBox) => number;
  readonly qrIn: (box: SheetBox) => string | null;
}

export async function rendered(pdf: Uint8Array): Promise<RenderedPage[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(pdf);
  const pages: RenderedPage[] = [];
  for (const page of document.pages()) {
    const { originalWidth, originalHeight } = page.getOriginalSize();
    // Before rendering, which closes the page.
    const text = page.getText();
    const scale = (DOTS_PER_MM * 25.4) / 72;
    const { data, width, height } = await page.render({ scale, render: 'bitmap' });
    pages.push(pageOf(data, width, height, originalWidth, originalHeight, text));
  }
  document.destroy();
  library.destroy();
  return pages;
}

function pageOf(data: Uint8Array, width: number, height: number, wide: number, tall: number, text: string): RenderedPage {
  const [widthMm, heightMm] = [(wide * 25.4) / 72, (tall * 25.4) / 72];
  // A page is squeezed into whole dots.
  const column = (mm: number) => Math.min(width, Math.max(0, Math.round((mm / widthMm) * width)));
  const row = (mm: number) => Math.min(height, Math.max(0, Math.round((mm / heightMm) * height)));
  const cut = ({ x, y, width: w, height: h }: SheetBox) => ({
    left: column(x),
    top: row(y),
    right: column(x + w),
    bottom: row(y + h),
  });
  const grey = (x: number, y: number) => data[(y * width + x) * 4]!;
  return {
    widthMm,
    heightMm,
    text,
    ink(box) {
      const { left, top, right, bottom } = cut(box);
      let inked = 0;
      for (let y = top; y < bottom; y++) for (let x = left; x < right; x++) if (grey(x, y) < 250) inked++;
      return inked / Math.max(1, (right - left) * (bottom - top));
    },
    qrIn(box) {
      const { left, top, right, bottom } = cut(box);
      const [w, h] = [right - left, bottom - top];
      const part = new Uint8ClampedArray(w * h * 4);
      for (let y = 0; y < h; y++)
        part.set(data.subarray(((top + y) * width + left) * 4, ((top + y) * width + right) * 4), y * w * 4);
      return readQr(part, w, h)?.data ?? null;
    },
  };
}
