import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** 256 random bits, as text for an address or a cookie. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** What is kept of a token. It holds 256 random bits, so that a plain hash cannot be undone by guessing. */
export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('hex');

/** Figures and letters without those that are mistaken for one another; 32, so that a byte picks evenly. */
const CODE_LETTERS = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';

/** 80 random bits to be typed from a terminal: `K7QM-2XWD-…`. */
export function newFirstPersonCode(): string {
  const letters = [...randomBytes(16)].map((byte) => CODE_LETTERS[byte % 32]!).join('');
  return letters.replace(/.{4}(?=.)/g, '$&-');
}

/** Whether a typed code is the one printed, however it was grouped and in small letters or capitals. */
export function isCode(typed: string, code: string): boolean {
  const digest = (text: string) =>
    createHash('sha256')
      .update(text.toUpperCase().replace(/[^A-Z0-9]/g, ''))
      .digest();
  return timingSafeEqual(digest(typed), digest(code));
}
