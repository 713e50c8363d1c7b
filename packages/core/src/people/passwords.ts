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
const surprise = (written: string, context: readonly string[]): number => takenApart(written, context).left;

/** A piece of a password that does not count, and why: everybody tries it, it is of this place, it runs on, or is said again. */
export interface GuessedPart {
  readonly part: string;
  readonly why: 'common' | 'context' | 'run' | 'repeated';
}

/**
 * What of a password does not count, in the order in which it stands there, and how many characters are left.
 *
 * @param context as for `passwordFault`
 */
export function guessedParts(written: string, context: readonly string[] = []) {
  const { guessed, left } = takenApart(written, context);
  return { guessed, left, needed: LEAST_SURPRISE };
}

function takenApart(written: string, context: readonly string[]): { readonly guessed: GuessedPart[]; readonly left: number } {
  const plain = plainOf(written).replace(/\s+/gu, '');
  const ofContext = context.flatMap((text) => plainOf(text).split(/[^\p{L}\p{N}]+/u)).filter((part) => part.length >= 3);
  const guesses = [
    ...COMMON_PARTS.map((part) => ({ part, why: 'common' as const })),
    ...ofContext.map((part) => ({ part, why: 'context' as const })),
  ].sort((a, b) => b.part.length - a.part.length);
  const unit = repeatedUnit(plain);
  const guessed: GuessedPart[] = unit.length < plain.length ? [{ part: unit, why: 'repeated' }] : [];
  let left = unit;
  for (const { part, why } of guesses) {
    if (!left.includes(part)) continue;
    left = left.replaceAll(part, ' ');
    guessed.push({ part, why });
  }
  const { kept, runs } = withoutRuns(left);
  guessed.push(...runs.map((part) => ({ part, why: 'run' as const })));
  // As whoever typed it reads it.
  guessed.sort((a, b) => plain.indexOf(a.part) - plain.indexOf(b.part));
  return { guessed, left: [...kept.replace(/\s+/gu, '')].length };
}

const plainOf = (text: string): string => text.normalize('NFKC').toLowerCase();

/** The shortest piece that a text is made of by repeating it. */
function repeatedUnit(text: string): string {
  const period = (text + text).indexOf(text, 1);
  return text.slice(0, period);
}

/** Without three or more characters in a row that are the same or follow one another: `aaaa`, `12345`, `fedc`. */
function withoutRuns(text: string): { readonly kept: string; readonly runs: readonly string[] } {
  const characters = [...text];
  const step = (index: number) => characters[index]!.codePointAt(0)! - characters[index - 1]!.codePointAt(0)!;
  const runs: string[] = [];
  let kept = '';
  for (let start = 0; start < characters.length; ) {
    let end = start + 1;
    const by = end < characters.length ? step(end) : Number.NaN;
    if (Math.abs(by) <= 1) while (end < characters.length && step(end) === by) end++;
    if (end - start < 3) kept += characters[start++];
    else {
      const run = characters.slice(start, end).join('');
      if (run.trim() !== '') runs.push(run);
      start = end;
    }
  }
  return { kept, runs };
}
