/** What people write for a crop's stage, and the one word the rules use. */

import type { Crop } from '../types.ts';
import { crops } from './crops.ts';

/** Other words for a stage; a crop takes only those whose stage it has. */
const OTHER_WORDS: readonly (readonly [stage: string, ...words: string[]])[] = [
  [
    'emergence',
    'emerged',
    'emerging',
    'germination',
    'sprouting',
    'seedling',
    'seedlings',
    've',
    'v1',
    'v2',
    'plántula',
    'nacencia',
  ],
  ['whorl', 'mid whorl', 'late whorl', 'early whorl', 'pre whorl', 'whorl stage', 'verticilo'],
  ['whorl', ...Array.from({ length: 16 }, (_, leaf) => `v${leaf + 3}`)],
  [
    'tassel',
    'tasseling',
    'tasselling',
    'pre tassel',
    'tassel emergence',
    'green tassel',
    'vt',
    'espigamiento',
    'panoja',
    'espiga',
  ],
  [
    'silk',
    'silks',
    'silking',
    'fresh silk',
    'green silk',
    'full silk',
    'early silk',
    'r1',
    'estigmas',
    'barbas',
    'jiloteo',
    'en jilote',
  ],
  [
    'dry-silk',
    'silk dry',
    'dried silk',
    'drying silk',
    'brown silk',
    'brown silks',
    'blister',
    'r2',
    'barbas secas',
    'estigmas secos',
  ],
  ['vegetative', 'vegetative growth', 'leaf', 'leaf growth', 'transplant', 'transplanted', 'vining', 'vegetativo', 'trasplante'],
  ['heading', 'head', 'heads', 'head formation', 'cupping', 'pre heading', 'cabeza'],
  ['flowering', 'flower', 'flowers', 'bloom', 'blooming', 'in bloom', 'first flower', 'en flor', 'flor'],
  ['fruiting', 'fruit', 'fruits', 'fruit set', 'green fruit', 'immature fruit', 'fruto', 'cuajado', 'fructificación', 'cuaje'],
  ['ripening', 'ripe', 'ripe fruit', 'coloring', 'colouring', 'breaker', 'turning', 'madurez', 'envero'],
  ['bulbing', 'bulb', 'bulb formation', 'bulb growth', 'bulbs', 'bulbo', 'bulbificación'],
  ['pods', 'pod', 'pod fill', 'pod set', 'pod growth', 'green pods', 'vaina', 'vainas', 'llenado'],
  ['tuber-formation', 'tuber initiation', 'tuberization', 'hooking', 'formación de tubérculos'],
  ['tuber-bulking', 'bulking', 'tuber growth', 'llenado'],
  ['vine-death', 'vine kill', 'senescence', 'dying down', 'muerte de follaje'],
  ['dormant', 'dormancy', 'dormancia'],
  ['bud-break', 'budbreak', 'bud burst', 'green tip', 'half inch green'],
  ['pre-bloom', 'prebloom', 'pink', 'tight cluster'],
  ['harvest', 'harvesting', 'harvested', 'picking', 'mature', 'cosechado', 'en cosecha'],
];

/** Words that fall on different stages in different crops: corn in bloom is corn in silk; at milk, sweet corn is picked. */
const CROP_WORDS: Readonly<Record<string, readonly (readonly [stage: string, ...words: string[]])[]>> = {
  'sweet-corn': [
    ['silk', 'flowering', 'bloom', 'floración', 'en flor'],
    ['harvest', 'milk', 'milk stage', 'r3', 'elote'],
  ],
  'field-corn': [
    ['silk', 'flowering', 'bloom', 'floración', 'en flor'],
    ['dry-silk', 'milk', 'milk stage', 'dough', 'dent', 'r3', 'r4', 'r5', 'elote'],
    ['harvest', 'black layer', 'physiological maturity', 'r6'],
  ],
};

/** One spelling for all spellings: no case, no accents, one space between words. */
const plain = (written: string): string =>
  written
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

function wordsOf(crop: Crop): ReadonlyMap<string, string> {
  const words = new Map<string, string>();
  const add = (word: string, stage: string) => {
    if (!words.has(plain(word))) words.set(plain(word), stage);
  };
  for (const stage of crop.stages) for (const word of [stage.id, stage.name.en, stage.name.es]) add(word, stage.id);
  // The rules' own spelling is found as it stands.
  for (const { id } of crop.stages) words.set(id, id);
  const known = new Set(crop.stages.map((stage) => stage.id));
  for (const [stage, ...words] of [...(CROP_WORDS[crop.id] ?? []), ...OTHER_WORDS])
    if (known.has(stage)) for (const word of words) add(word, stage);
  return words;
}

const BY_CROP = new Map(crops.map((crop) => [crop.id, { crop, words: wordsOf(crop) }]));
const BBCH = /^(?:bbch )?(\d{2})$/;

/**
 * The catalogue's word for a stage as somebody wrote it: a plain word in English or Spanish in any case and
 * with spaces, hyphens or underscores, or a two-digit BBCH code (`63`, `BBCH 63`).
 * Null when the crop or the word is not known.
 */
export function canonicalStage(crop: string, written: string): string | null {
  const known = BY_CROP.get(crop);
  if (!known) return null;
  const own = known.words.get(written);
  if (own !== undefined) return own;
  const word = plain(written).replace(/^bbch(?=\d)/, 'bbch ');
  const code = BBCH.exec(word)?.[1];
  if (code === undefined) return known.words.get(word) ?? null;
  return known.crop.stages.find(({ bbch: [from, to] }) => Number(code) >= from && Number(code) <= to)?.id ?? null;
}

/** Place of a stage in its crop's development, from 0; null when crop or stage is not known. */
export function stageOrder(crop: string, written: string): number | null {
  const stage = canonicalStage(crop, written);
  if (stage === null) return null;
  return BY_CROP.get(crop)!.crop.stages.findIndex(({ id }) => id === stage);
}
