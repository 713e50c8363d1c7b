/** What people write for an insect at the head of a column, and the one slug it stands for. */
import { insectEntries } from './insects.ts';

/**
 * Short names and abbreviations as growers' networks write them (common practice, no source), for insects of the catalogue
 * and for others that a sheet may count. An abbreviation is asked about once; a name is not.
 */
const WRITTEN: readonly (readonly [slug: string, abbreviations: readonly string[], names: readonly string[]])[] = [
  [
    'helicoverpa-zea',
    ['cew', 'tfw', 'h zea', 'hz', 'bollworm', 'geo'],
    ['earworm', 'fruitworm', 'cotton bollworm', 'gusano del elote', 'elotero', 'gusano del fruto', 'gusano de la mazorca'],
  ],
  ['ostrinia-nubilalis', ['ecb', 'o nubilalis'], ['corn borer', 'barrenador europeo', 'taladro del maiz', 'barrenador del maiz']],
  ['spodoptera-frugiperda', ['faw', 's frugiperda'], ['cogollero', 'gusano cogollero del maiz', 'gusano ejercitero de otono']],
  ['agrotis-ipsilon', ['bcw', 'a ipsilon'], ['gusano trozador', 'trozador negro', 'gusano cortador negro']],
  ['melittia-cucurbitae', ['svb', 'm cucurbitae'], ['vine borer', 'barrenador de la guia', 'barrenador de la calabaza']],
  ['cydia-pomonella', ['cm', 'c pomonella'], ['carpocapsa', 'polilla del manzano', 'palomilla de la manzana']],
  ['striacosta-albicosta', ['wbc', 's albicosta'], ['bean cutworm', 'gusano cortador del frijol']],
  ['plutella-xylostella', ['dbm', 'p xylostella'], ['diamondback', 'dorso de diamante', 'palomilla de la col']],
  ['pieris-rapae', ['icw', 'p rapae'], ['cabbageworm', 'cabbage white', 'mariposa de la col', 'mariposita blanca de la col']],
  ['trichoplusia-ni', ['cl', 't ni'], ['cabbage looper', 'falso medidor', 'gusano falso medidor']],
  ['spodoptera-exigua', ['baw', 's exigua'], ['beet armyworm', 'gusano soldado']],
  ['mythimna-unipuncta', ['taw', 'm unipuncta'], ['true armyworm', 'common armyworm', 'armyworm']],
  ['acrolepiopsis-assectella', ['lm'], ['leek moth', 'polilla del puerro', 'polilla del poro']],
  ['tuta-absoluta', ['tlm', 't absoluta'], ['tomato leafminer', 'polilla del tomate', 'palomilla del tomate']],
  ['keiferia-lycopersicella', ['tpw'], ['tomato pinworm', 'gusano alfiler']],
  ['helicoverpa-armigera', ['h armigera', 'obw'], ['old world bollworm', 'old-world bollworm']],
  ['cydia-nigricana', ['pm'], ['pea moth', 'polilla del chicharo']],
  ['heliothis-virescens', ['tbw', 'h virescens'], ['tobacco budworm', 'gusano del tabaco']],
  ['peridroma-saucia', ['vcw', 'p saucia'], ['variegated cutworm', 'gusano cortador variegado']],
  ['diatraea-grandiosella', ['swcb'], ['southwestern corn borer', 'barrenador del suroeste']],
  ['agrotis-segetum', ['a segetum'], ['turnip moth']],
  ['phthorimaea-operculella', ['ptw', 'ptm', 'p operculella'], ['tuberworm', 'potato tuber moth', 'polilla de la papa']],
  ['anarsia-lineatella', ['ptb'], ['peach twig borer']],
];

/** As names are compared: no accents, case or signs; words parted by one space. */
export const plainName = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

export interface WrittenInsect {
  readonly slug: string;
  /** Written short: what it stands for is asked once. */
  readonly short: boolean;
}

const names = new Map<string, WrittenInsect>();
for (const [slug, abbreviations, longer] of WRITTEN) {
  for (const name of abbreviations) names.set(plainName(name), { slug, short: true });
  for (const name of [slug, ...longer]) names.set(plainName(name), { slug, short: false });
}
for (const { insect } of insectEntries) {
  const { id, scientificName, commonName } = insect;
  const common = [commonName.en, commonName.es].flatMap((text) => text.split(/[,/()]| or | o /));
  for (const name of [id, scientificName, ...common]) names.set(plainName(name), { slug: id, short: false });
}

/** Traps and counts stand beside the insect's name in many headings. */
const BESIDE = new Set(
  'moth moths adult adults male males count counts trap traps catch no number of the polilla polillas palomilla palomillas adultos machos trampa trampas conteo per night noche en de por s'.split(
    ' ',
  ),
);
const LONGEST_NAME = 5;

export interface InsectInText extends WrittenInsect {
  /** The words that are left, without those that stand beside many insects' names. */
  readonly rest: string;
  /** The insect's name as the text has it. */
  readonly written: string;
}

/** Sheets write the same names over and over. */
const found = new Map<string, InsectInText | null>();
const MOST_KEPT = 20_000;

/** The insect that a text names, alone or among other words; null where it names none or two. */
export function insectIn(text: string): InsectInText | null {
  const known = found.get(text);
  if (known !== undefined) return known;
  if (found.size > MOST_KEPT) found.clear();
  const insect = searched(text);
  found.set(text, insect);
  return insect;
}

function searched(text: string): InsectInText | null {
  const tokens = text.split(/[^\p{L}\p{N}.]+/u).filter((token) => plainName(token) !== '');
  const plain = tokens.map(plainName);
  for (let length = Math.min(LONGEST_NAME, tokens.length); length > 0; length--)
    for (let start = 0; start + length <= tokens.length; start++) {
      const named = nameAt(plain.slice(start, start + length));
      if (!named) continue;
      const others = tokens.filter((_, index) => index < start || index >= start + length);
      if (others.length > 0 && insectIn(others.join(' ')) !== null) return null;
      return {
        ...named,
        written: tokens.slice(start, start + length).join(' '),
        rest: others.filter((token) => !BESIDE.has(plainName(token))).join(' '),
      };
    }
  return null;
}

/** A name as it is known, or its plural. */
function nameAt(words: readonly string[]): WrittenInsect | undefined {
  const name = words.join(' ');
  return names.get(name) ?? (name.endsWith('s') ? names.get(name.slice(0, -1)) : undefined);
}
