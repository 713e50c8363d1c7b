/** When an answer was read, where it is one that the device kept: a page without signal says from when it is. */
import { replaceEqualDeep } from '@tanstack/react-query';

/** Set by the service worker on what it gives out of its own, in ms since 1970. */
export const READ_AT = 'x-duskwatch-read';

const readAtMs = new WeakMap<object, number>();

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null;

/** Remembers of an answer when it was read, if there was no signal for a new one. */
export function rememberReading(answer: unknown, response: Response): void {
  const ms = Number(response.headers.get(READ_AT));
  if (ms > 0 && isObject(answer)) readAtMs.set(answer, ms);
}

/** In ms since 1970; null: the server has just answered so. */
export const readingOf = (answer: unknown): number | null => (isObject(answer) ? (readAtMs.get(answer) ?? null) : null);

/** Keeps what is alike of an older answer, as the library does by itself, and knows of it how old it is now. */
export function shareAnswers(older: unknown, newer: unknown): unknown {
  const shared = replaceEqualDeep(older, newer);
  if (isObject(shared) && isObject(newer) && shared !== newer) {
    const ms = readAtMs.get(newer);
    if (ms === undefined) readAtMs.delete(shared);
    else readAtMs.set(shared, ms);
  }
  return shared;
}

/** As `readingOf`; of what is asked for piece by piece, the oldest piece. */
export function oldestReading(data: unknown): number | null {
  const pieces = isObject(data) && 'pages' in data && Array.isArray(data.pages) ? data.pages : [data];
  const read = pieces.flatMap((piece) => readingOf(piece) ?? []);
  return read.length === 0 ? null : Math.min(...read);
}
