/** Finding names by what somebody types: accents, case and the order of words do not matter. */

/** `Peña Alta` as `pena alta`. */
export const foldText = (text: string): string => text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();

/** What was typed, as the words that each must be found. */
export const typedWords = (typed: string): string[] => foldText(typed).split(/\s+/).filter(Boolean);

/**
 * How well folded `names`, the first of which is the proper one, answer typed words: 0 is the very name, 1 its beginning,
 * 2 beginnings of words in any of them, 3 anything within; null: a word is not there.
 */
export function matchOf(words: readonly string[], names: readonly string[]): 0 | 1 | 2 | 3 | null {
  if (words.length === 0) return null;
  const typed = words.join(' ');
  const [name = ''] = names;
  if (name === typed) return 0;
  if (name.startsWith(typed)) return 1;
  const all = names.join(' ');
  if (!words.every((word) => all.includes(word))) return null;
  return words.every((word) => beginsAWord(all, word)) ? 2 : 3;
}

function beginsAWord(text: string, word: string): boolean {
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1))
    if (at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1]!)) return true;
  return false;
}
