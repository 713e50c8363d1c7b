/** What stands in a cell of counts: a figure, a word, or both (`12 (mixed)`, `0*`). */
import type { WordMeaning } from '@duskwatch/core';

export interface WrittenCount {
  /** Null where no figure stands in the cell. */
  readonly figure: number | null;
  /** The figure has parts below one: already divided, as moths a night. */
  readonly parted: boolean;
  /** What is beside the figure, with `#` in its place, or the word alone; null for a bare figure. Case does not matter. */
  readonly word: string | null;
}

const THOUSANDS = /^\d{1,3}([,.' ]\d{3})+$/;
const LEADING = /^([<>~≈≥≤+]?\s*)(-?\d+(?:[.,' ]\d+)*)(.*)$/su;
const TRAILING = /^([^\d]*[^\d\s<>~≈≥≤+.,-][^\d]*)\b(\d+)$/u;

/** Reads a filled cell. `decimalComma`: the file writes `12,5` for twelve and a half. */
export function writtenCount(text: string, decimalComma: boolean): WrittenCount {
  const leading = LEADING.exec(text);
  if (leading) {
    const [, before, digits, after] = leading as unknown as [string, string, string, string];
    const { figure, parted } = figureOf(digits, decimalComma);
    // `7/12` and `3-4` in a cell of counts are words, not a seven and a three.
    if (figure !== null && !/^\s*[/:-]\s*\d/.test(after)) {
      const word = plainWord(`${before.trim()}#${/^\s|^\p{L}/u.test(after) ? ' ' : ''}${after.trim()}`);
      return { figure, parted, word: word === '#' ? null : word };
    }
  }
  const trailing = TRAILING.exec(text);
  if (trailing && /[:=]\s*$/.test(trailing[1]!))
    return { figure: Number(trailing[2]), parted: false, word: plainWord(`${trailing[1]!.trim()} #`) };
  return { figure: null, parted: false, word: plainWord(text) };
}

function figureOf(digits: string, decimalComma: boolean): { figure: number | null; parted: boolean } {
  if (/^-?\d+$/.test(digits)) return { figure: Number(digits), parted: false };
  const point = decimalComma ? ',' : '.';
  if (THOUSANDS.test(digits) && !digits.includes(point)) return { figure: Number(digits.replace(/\D/g, '')), parted: false };
  const parts = /^(\d+)[.,](\d+)$/.exec(digits);
  if (!parts) return { figure: null, parted: false };
  const figure = Number(`${parts[1]}.${parts[2]}`);
  return { figure, parted: !Number.isInteger(figure) };
}

const plainWord = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

const NOT_CHECKED =
  /^([-–—.x?/]+|n\s*[/.-]?\s*[acdr]\.?|na|nan|null|not (checked|visited|read|done|counted|set)|no (check|data|visit|dato|datos|revisi[oó]n|revisad[ao])|un(checked|read)|missed|skip(ped)?|s\s*\/\s*[dr]|sin (dato|datos|revisar|revisi[oó]n|lectura)|pendiente)$/;
const REASONS: readonly (readonly [WordMeaning, RegExp])[] = [
  [
    'lure-missing',
    /\b(no|missing|lost|without) (lure|bait|pheromone|cap)|lure (missing|gone|lost|fell)|sin (feromona|se[nñ]uelo|atrayente|cebo)/,
  ],
  ['stolen', /\b(stolen|gone|missing|lost|theft|vandal\w*|robad[ao]|perdid[ao]|desaparecid[ao]|no est[aá])\b/],
  ['flooded', /\b(flood\w*|under ?water|full of water|water|wet|inundad[ao]|agua|mojad[ao])\b/],
  ['full', /\b(full|saturated|overflow\w*|llen[ao]|saturad[ao])\b/],
  ['down', /\b(down|fell|fallen|fall|blown|knocked|tipped|on (the )?ground|ca[ií]d[ao]|tirad[ao]|tumbad[ao]|en el suelo)\b/],
  [
    'other',
    /\b(damaged?|broken|broke|torn|destroyed|chewed|ripped|mowed|unfit|bad|spoiled|ants|birds?|bear|mouse|mice|spider|da[nñ]ad[ao]|rot[ao]|destruid[ao]|hormigas|ara[nñ]a)\b/,
  ],
];
const NONE = /^(none|nil|zero|nothing|ningun[ao]|nada|cero|no moths?|sin polillas|sin captura)$/;
const DOUBT = /\?|~|≈|\b(approx|about|est|estimate[d]?|unsure|aprox|m[aá]s o menos)\b/;

/** What a word most likely means; null where it does not tell. Only ever a suggestion. */
export function likelyMeaning(word: string): WordMeaning | null {
  if (word.includes('#')) return DOUBT.test(word) ? 'doubtful' : reasonIn(word) === null ? 'count' : 'doubtful';
  if (NOT_CHECKED.test(word)) return 'not-checked';
  if (NONE.test(word)) return 'zero';
  return reasonIn(word);
}

const reasonIn = (word: string): WordMeaning | null => REASONS.find(([, words]) => words.test(word))?.[0] ?? null;

/** Whether a text could stand in a cell of counts: a figure first, or a word that speaks of a trap or of its absence. */
export function couldBeCount(text: string, decimalComma: boolean): boolean {
  const { figure, word } = writtenCount(text, decimalComma);
  return figure !== null ? text.length <= 40 : word !== null && word.length <= 30 && likelyMeaning(word) !== null;
}

/** The figures say of themselves that they are already divided: `per night`, `/wk`, `por noche`. */
export function dividedBy(text: string): 'per-night' | 'per-week' | null {
  if (/(\bper\b|\bpor\b|\/|\ba\b)\s*(trap\s*(\/|per)\s*)?(night|day|nite|noche|d[ií]a)\b/i.test(text)) return 'per-night';
  return /(\bper\b|\bpor\b|\/)\s*(trap\s*(\/|per)\s*)?(week|wk|semana)\b|\bweekly\b|\bsemanal(es)?\b/i.test(text)
    ? 'per-week'
    : null;
}
