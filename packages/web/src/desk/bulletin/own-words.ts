/** Blocks of a bulletin that somebody put in other words, by language and block, kept on this device for its day. */
import type { BulletinBlock, IsoDay, Language } from '@duskwatch/core';

export interface OwnWords {
  readonly text: string;
  /** What the draft said when it was put in other words. */
  readonly draft: string;
}

export type Worded = Readonly<Record<Language, Readonly<Record<string, OwnWords>>>>;
const NONE: Worded = { en: {}, es: {} };

const keyOf = (on: IsoDay) => `duskwatch.bulletin.${on}`;

export const draftOf = ({ lines, fixed }: BulletinBlock): string => (fixed ? '' : lines.join('\n'));

/** Puts a block in other words; back to the draft, where they are the same. */
export function worded(before: Worded, language: Language, block: BulletinBlock, text: string): Worded {
  const draft = draftOf(block);
  const { [block.id]: _, ...others } = before[language];
  return { ...before, [language]: text === draft ? others : { ...others, [block.id]: { text, draft } } };
}

/** Whether the draft has come to say something else since. */
export const isStale = (own: OwnWords | undefined, block: BulletinBlock): boolean =>
  own !== undefined && own.draft !== draftOf(block);

/** What is sent of each block that is not as drafted: what always is, with what was added to it. */
export function sent(own: Worded[Language], blocks: readonly BulletinBlock[]): Record<string, string> {
  return Object.fromEntries(
    blocks.flatMap((block) => {
      const said = own[block.id]?.text;
      if (said === undefined) return [];
      return [[block.id, block.fixed ? [...block.lines, said].join('\n') : said]];
    }),
  );
}

export function keptWords(on: IsoDay): Worded {
  try {
    const kept = JSON.parse(localStorage.getItem(keyOf(on)) ?? '{}') as Partial<Worded>;
    return { en: kept.en ?? {}, es: kept.es ?? {} };
  } catch {
    return NONE;
  }
}

export function keepWords(on: IsoDay, words: Worded): void {
  try {
    if (Object.values(words).every((each) => Object.keys(each).length === 0)) localStorage.removeItem(keyOf(on));
    else localStorage.setItem(keyOf(on), JSON.stringify(words));
  } catch {
    // Closed to us: what was written lasts as long as the page.
  }
}
