import { words } from '../text/index.ts';

const FORMAT = new Intl.DateTimeFormat(words.locale, { dateStyle: 'medium', timeStyle: 'short' });

/** An instant where the reader is: `8 Jul 2026, 13:05`. */
export const instantText = (at: string): string => FORMAT.format(new Date(at));

const NOTICEABLE_MS = 120_000;

/** True when the writer's clock was off by more than a person would not notice. */
export const clockWasOff = ({ at, countedAt }: { readonly at: string; readonly countedAt: string }): boolean =>
  Math.abs(Date.parse(at) - Date.parse(countedAt)) > NOTICEABLE_MS;
