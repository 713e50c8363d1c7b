/** What people write for a crop, and the one slug the rules use. */
import { crops } from './crops.ts';

const OTHER_WORDS: readonly (readonly [crop: string, ...words: string[]])[] = [
  ['sweet-corn', 'sweetcorn', 'corn sweet', 'elote'],
  ['field-corn', 'grain corn', 'dent corn', 'maize', 'grain maize', 'maíz grano'],
  ['tomato', 'tomatoes', 'tomates', 'jitomate'],
  ['pepper', 'peppers', 'bell pepper', 'bell peppers', 'sweet pepper', 'chile', 'pimientos'],
  ['potato', 'potatoes', 'patata', 'papas'],
  ['squash', 'squashes', 'summer squash', 'winter squash', 'zucchini', 'courgette', 'calabacín'],
  ['pumpkin', 'pumpkins', 'calabazas'],
  ['brassicas', 'brassica', 'cole crops', 'cabbage', 'broccoli', 'cauliflower', 'kale', 'brussels sprouts', 'col', 'brócoli'],
  ['lettuce', 'lettuces', 'romaine', 'iceberg', 'lechugas'],
  ['beet', 'beets', 'beetroot', 'sugar beet', 'table beet', 'remolacha', 'betabeles'],
  ['onion', 'onions', 'cebollas'],
  ['garlic', 'ajos'],
  ['leek', 'leeks', 'puerro', 'poro', 'puerros', 'poros'],
  ['peas', 'pea', 'green peas', 'snap peas', 'chicharo', 'chicharos', 'guisante', 'guisantes', 'arveja'],
  ['beans', 'bean', 'snap beans', 'green beans', 'dry beans', 'frijol', 'frijoles', 'ejote', 'ejotes'],
  ['eggplant', 'eggplants', 'aubergine', 'berenjenas'],
];

const plain = (text: string) =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, '-');

const slugs = new Map<string, string>();
for (const { id, name } of crops) for (const word of [id, name.en, name.es]) slugs.set(plain(word), id);
for (const [id, ...words] of OTHER_WORDS) for (const word of words) slugs.set(plain(word), id);

/** The catalogue's slug for a crop as somebody wrote it; a crop it does not know keeps its own name as a slug. */
export const canonicalCrop = (written: string): string => slugs.get(plain(written)) ?? plain(written);
