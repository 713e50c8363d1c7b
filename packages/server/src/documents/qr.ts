import QRCode from 'qrcode';

/** Squares of a code; true is dark. */
export interface QrCode {
  readonly size: number;
  readonly isDark: (row: number, column: number) => boolean;
}

/** Light squares that a code must have around it (ISO/IEC 18004, from memory). */
export const QUIET_SQUARES = 4;
/** Smaller squares are not read off paper by every phone (common practice, no source). */
const SMALLEST_SQUARE_MM = 0.33;

/**
 * The code of a text for a square of `sideMm` with its quiet zone: with as much error correction as leaves its squares
 * large enough; null when none does, or when the text is longer than a code holds.
 */
export function qrCode(text: string, sideMm: number): QrCode | null {
  for (const errorCorrectionLevel of ['Q', 'M', 'L'] as const) {
    const code = encoded(text, errorCorrectionLevel);
    if (code !== null && sideMm / (code.size + 2 * QUIET_SQUARES) >= SMALLEST_SQUARE_MM) return code;
  }
  return null;
}

function encoded(text: string, errorCorrectionLevel: 'Q' | 'M' | 'L'): QrCode | null {
  try {
    const { modules } = QRCode.create(text, { errorCorrectionLevel });
    return { size: modules.size, isDark: (row, column) => modules.get(row, column) === 1 };
  } catch {
    return null;
  }
}
