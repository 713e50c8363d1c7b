/** What a sheet says once its open questions are answered, or taken as they most likely will be. */
import { type IsoDay, insectIn, type SheetMatch, type SheetReading, type WordMeaning } from '@duskwatch/core';
import type { Sighting } from './sightings.ts';
import { trapNamer } from './trap-names.ts';
import { likelyMeaning, writtenCount } from './words/written-count.ts';
import { dayMeant } from './words/written-day.ts';

/** The day of the check, or null while it is open. */
export const dayOfCheck = (
  { written, yearTold }: Sighting,
  match: Pick<SheetMatch, 'dateOrder' | 'year' | 'dayShift'>,
): IsoDay | null =>
  written === null
    ? null
    : dayMeant(written, { order: match.dateOrder, year: yearTold ?? match.year, shift: match.dayShift ?? 0 });

/** The name that decides which insect a sighting is of: the sheet's, else what holds for the whole sheet. */
export const insectOf = ({ insect }: Sighting, match: Pick<SheetMatch, 'insects' | 'constants'>): string | null =>
  insect === '' ? match.constants.insect : (match.insects[insect] ?? insectIn(insect)?.slug ?? insect);

/** What the cell of counts means by the match; a word that it does not settle means what is likeliest. */
export function meaningOf(
  sighting: Sighting,
  match: Pick<SheetMatch, 'words'>,
  decimalComma: boolean,
): { figure: number | null; meaning: WordMeaning; word: string | null } {
  if (sighting.count.text === '') return { figure: null, meaning: 'unfit', word: null };
  const { figure, word } = writtenCount(sighting.count.text, decimalComma);
  if (word === null) return { figure, meaning: 'count', word };
  return { figure, meaning: match.words[word] ?? likelyMeaning(word) ?? 'not-checked', word };
}

/** The reading of counts: how many traps, checks and days, which insects, from when to when. */
export function readingOf(
  seen: readonly Sighting[],
  match: SheetMatch,
  decimalComma: (sighting: Sighting) => boolean,
): SheetReading {
  const nameOf = trapNamer(seen);
  const traps = new Set<string>();
  const insects = new Set<string>();
  const days = new Set<IsoDay>();
  const undated = new Set<string>();
  const words = new Set<string>();
  let checks = 0;
  for (const sighting of seen) {
    const { meaning, word } = meaningOf(sighting, match, decimalComma(sighting));
    if (word !== null) words.add(word);
    if (meaning === 'not-checked') continue;
    checks++;
    const insect = insectOf(sighting, match);
    traps.add(`${nameOf(sighting)}\n${insect ?? ''}`);
    if (insect !== null) insects.add(insect);
    const day = dayOfCheck(sighting, match);
    if (day !== null) days.add(day);
    else undated.add(sighting.day.text);
  }
  const sorted = [...days].sort();
  return {
    kind: 'counts',
    traps: traps.size,
    checks,
    insects: [...insects].sort(),
    from: sorted[0] ?? null,
    to: sorted.at(-1) ?? null,
    words: [...words],
    days: days.size + undated.size,
  };
}
