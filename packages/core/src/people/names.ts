/** Names people sign in with: two that look alike to a reader should be one name, or be refused. */

export const NAME_MAX_LENGTH = 80;

export type NameFault = 'missing' | 'too-long' | 'invisible-characters' | 'mixed-alphabets';

/** As kept and shown: compatibility forms (full-width letters, ligatures) become plain ones, spaces single. */
export const tidyName = (written: string): string => written.normalize('NFKC').replace(/\s+/gu, ' ').trim();

/** What all spellings of one name share: `ＩＤＡ  Brook` and `ida brook`. */
export const nameKey = (written: string): string => tidyName(written).toLowerCase().normalize('NFKC');

/** Unassigned, private, control and format characters, and those that leave no mark when drawn. */
const INVISIBLE = /[\p{C}\p{Default_Ignorable_Code_Point}]/u;
/** Alphabets whose letters can be mistaken for one another's. */
const ALPHABETS = [
  /\p{Script=Latin}/u,
  /\p{Script=Cyrillic}/u,
  /\p{Script=Greek}/u,
  /\p{Script=Armenian}/u,
  /\p{Script=Cherokee}/u,
];

/**
 * What is wrong with a name; null when nothing is. A word in letters of two alphabets is refused (`Idа` with a
 * Cyrillic а), after the idea of single-script strings in Unicode Technical Standard 39; a whole word of another
 * alphabet that looks like a Latin one is not detected.
 */
export function nameFault(written: string): NameFault | null {
  const name = tidyName(written);
  if (name === '') return 'missing';
  if ([...name].length > NAME_MAX_LENGTH) return 'too-long';
  if (INVISIBLE.test(name)) return 'invisible-characters';
  const mixed = (word: string) => ALPHABETS.filter((alphabet) => alphabet.test(word)).length > 1;
  return name.split(/[^\p{L}\p{M}]+/u).some(mixed) ? 'mixed-alphabets' : null;
}
