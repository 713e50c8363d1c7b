/**
 * The language of this page. It holds as long as the page is loaded, so that texts, formats and axes may be made once;
 * choosing another loads the page anew.
 */
import { type DayOrder, LANGUAGES, type Language } from '@duskwatch/core';
import { remembered } from '../browser/remembered.ts';

const wished = (): readonly string[] => globalThis.navigator?.languages ?? [];

function preferred(): Language {
  const known = wished().flatMap((tag) => LANGUAGES.find((each) => tag === each || tag.startsWith(`${each}-`)) ?? []);
  return known[0] ?? 'en';
}

/** The United States write the month first; a browser that says only `en` is taken for one of there. */
function usualOrder(): DayOrder {
  const english = wished().find((tag) => /^en(-|$)/.test(tag));
  return english === 'en' || english === 'en-US' ? 'month-day' : 'day-month';
}

const languageChoice = remembered<Language>('duskwatch.language', LANGUAGES, preferred);
const orderChoice = remembered<DayOrder>('duskwatch.day-order', ['day-month', 'month-day'], usualOrder);

export const language: Language = languageChoice.read();
/** Spanish knows one order. */
export const dayOrder: DayOrder = language === 'es' ? 'day-month' : orderChoice.read();
/** For formats of dates and numbers. */
export const locale = language === 'es' ? 'es-MX' : dayOrder === 'month-day' ? 'en-US' : 'en-GB';

/** One of several languages' texts. */
export const inLanguage = <T>(texts: Readonly<Record<Language, T>>): T => texts[language];

/** For the next page that is loaded. */
export const rememberLanguage = (next: Language): void => languageChoice.choose(next);

/** Another language from the next page on: this page is loaded anew for it. */
export function chooseLanguage(next: Language): void {
  languageChoice.choose(next);
  if (next !== language) location.reload();
}

export function chooseDayOrder(next: DayOrder): void {
  orderChoice.choose(next);
  if (next !== dayOrder) location.reload();
}
