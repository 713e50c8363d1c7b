/**
 * Which passwords are accepted, after NIST SP 800-63B-4 (2025), section 3.1.1.2: long enough where the password is
 * all there is, any characters, nothing that everybody would guess; no rules of composition, no change by calendar.
 */
import { COMMON_PARTS } from './common-passwords.ts';

/** Characters (code points); the minimum of SP 800-63B-4 for a password without a second factor. */
export const PASSWORD_MIN_LENGTH = 15;
/** The standard asks for at least 64 to be allowed; the limit only keeps a request small. */
export const PASSWORD_MAX_LENGTH = 256;

export type PasswordFault = 'too-short' | 'too-long' | 'easily-guessed';

/** As it is compared: the same whether a keyboard sent é as one character or as two. */
export const tidyPassword = (written: string): string => written.normalize('NFC');

/**
 * What is wrong with a password; null when nothing is.
 *
 * @param context words somebody would try first here: the person's name, the program's.
 */
export function passwordFault(written: string, context: readonly string[] = []): PasswordFault | null {
  const length = [...tidyPassword(written)].length;
  if (length < PASSWORD_MIN_LENGTH) return 'too-short';
  if (length > PASSWORD_MAX_LENGTH) return 'too-long';
  return surprise(written, context) < LEAST_SURPRISE ? 'easily-guessed' : null;
}

/**
 * Characters that must be left when what is easily guessed is taken away. The standard leaves the blocklist to the
 * verifier; six is the choice of Duskwatch, no source.
 */
const LEAST_SURPRISE = 6;

/** Characters left after repeats are written once and runs, common passwords and words of the context are taken out. */
function surprise(written: string, context: readonly string[]): number {
  const plain = written.normalize('NFKC').toLowerCase().replace(/\s+/gu, '');
  const parts = context.flatMap((text) =>
    text
      .normalize('NFKC')
      .toLowerCase()
      .split(/[^\p{L}\p{N}]+/u),
  );
  const guesses = [...COMMON_PARTS, ...parts.filter((part) => part.length >= 3)].sort((a, b) => b.length - a.length);
  let left = repeatedUnit(plain);
  for (const guess of guesses) left = left.replaceAll(guess, ' ');
  return [...withoutRuns(left).replace(/\s+/gu, '')].length;
}

/** The shortest piece that a text is made of by repeating it. */
function repeatedUnit(text: string): string {
  const period = (text + text).indexOf(text, 1);
  return text.slice(0, period);
}

/** Without three or more characters in a row that are the same or follow one another: `aaaa`, `12345`, `fedc`. */
function withoutRuns(text: string): string {
  const characters = [...text];
  const step = (index: number) => characters[index]!.codePointAt(0)! - characters[index - 1]!.codePointAt(0)!;
  let kept = '';
  for (let start = 0; start < characters.length; ) {
    let end = start + 1;
    const by = end < characters.length ? step(end) : Number.NaN;
    if (Math.abs(by) <= 1) while (end < characters.length && step(end) === by) end++;
    if (end - start < 3) kept += characters[start++];
    else start = end;
  }
  return kept;
}
