/** What a page says, to be held against the sentences that the app has in English. */
import { readdirSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { lazily } from '../packages/core/src/base/lazily.ts';
import { english } from '../packages/core/src/index.ts';

const CORE = new URL('../packages/core/src/index.ts', import.meta.url);
const WORDS = new URL('../packages/web/src/text/', import.meta.url);
/** Fewer words than this may be names, or Spanish too. */
const FEWEST_WORDS = 4;

const isSentence = (text: string) => (text.match(/\p{L}{2,}/gu) ?? []).length >= FEWEST_WORDS;

/** What is left of a message between the values it is given. */
const pieces = (message: (...values: unknown[]) => unknown): string[] => {
  try {
    const values = Array.from({ length: message.length }, (_, index) => 1_000_003 + index * 7);
    return String(message(...values)).split(/[\d.,]*1[.,]?000[.,]?0\d\d/);
  } catch {
    return [];
  }
};

function messages(texts: unknown): string[] {
  if (typeof texts === 'string') return [texts];
  if (typeof texts === 'function') return pieces(texts as (...values: unknown[]) => unknown);
  if (typeof texts !== 'object' || texts === null) return [];
  return Object.values(texts).flatMap(messages);
}

/** English of every text that has a Spanish side. */
function localTexts(value: unknown, seen = new Set<unknown>()): string[] {
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  const { en, es } = value as { en?: unknown; es?: unknown };
  if (typeof en === 'string' && typeof es === 'string') return [en];
  return Object.values(value).flatMap((each) => localTexts(each, seen));
}

export const englishSentences = lazily(readSentences);

async function readSentences(): Promise<string[]> {
  const files = readdirSync(WORDS).filter((file) => /^(\w+\.)?en\.ts$/.test(file));
  const words = await Promise.all(files.map((file) => import(new URL(file, WORDS).href)));
  const core: Record<string, unknown> = await import(CORE.href);
  const catalogue = Object.values(core).flatMap((each) => localTexts(each));
  const practice = english({ temperature: 'F' });
  return [...new Set([...words.flatMap(messages), ...messages(practice.standing), ...catalogue])]
    .map((text) => text.trim())
    .filter(isSentence);
}

/** The lines that hold a sentence of these. One with fewer words than a sentence has holds none. */
export const leftInEnglish = (lines: readonly string[], english: readonly string[]): string[] =>
  [...new Set(lines)].filter((line) => isSentence(line) && english.some((text) => line.includes(text)));

/** All that is seen or heard, but for names, figures and what is cited in its own language. */
export const heard = (page: Page) =>
  page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode())
      if (!node.parentElement!.closest('script, style, noscript, [lang="en"], code')) found.push(node.textContent!.trim());
    for (const element of document.querySelectorAll('[aria-label], [aria-description], [placeholder], [title]'))
      for (const attribute of ['aria-label', 'aria-description', 'placeholder', 'title'])
        found.push(element.getAttribute(attribute) ?? '');
    return found.filter(Boolean);
  });
