/** Where on the plant, or beside it, each stage of an insect is to be looked for. */
import { DELAWARE_KUHAR, FROM_MEMORY } from './sources.ts';
import type { SearchPlace } from './types.ts';

const EARWORM = 'helicoverpa-zea';
const CORN = ['sweet-corn', 'field-corn'];

export const searchPlaces: readonly SearchPlace[] = [
  {
    ...FROM_MEMORY,
    id: 'earworm-eggs-on-corn',
    insect: EARWORM,
    crops: CORN,
    stage: 'egg',
    where: { en: 'one by one on fresh silks', es: 'uno a uno sobre los estigmas frescos' },
  },
  {
    ...FROM_MEMORY,
    id: 'earworm-small-larvae-on-corn',
    insect: EARWORM,
    crops: CORN,
    stage: 'small-larva',
    where: {
      en: 'in the silks and under the husk at the tip of the ear',
      es: 'entre los estigmas y bajo las brácteas de la punta',
    },
  },
  {
    ...FROM_MEMORY,
    id: 'earworm-large-larvae-on-corn',
    insect: EARWORM,
    crops: CORN,
    stage: 'large-larva',
    where: { en: 'inside the ear, from the tip down', es: 'dentro de la mazorca, desde la punta hacia abajo' },
  },
  {
    ...DELAWARE_KUHAR,
    id: 'fruitworm-eggs-on-tomato',
    insect: EARWORM,
    crops: ['tomato'],
    stage: 'egg',
    where: { en: 'on the leaves below the flower clusters', es: 'en las hojas debajo de los racimos de flores' },
  },
  {
    ...FROM_MEMORY,
    id: 'fruitworm-small-larvae-on-tomato',
    insect: EARWORM,
    crops: ['tomato'],
    stage: 'small-larva',
    where: { en: 'on young green fruit, at the stem end', es: 'en los frutos verdes tiernos, junto al pedúnculo' },
  },
  {
    ...FROM_MEMORY,
    id: 'fruitworm-large-larvae-on-tomato',
    insect: EARWORM,
    crops: ['tomato'],
    stage: 'large-larva',
    where: { en: 'inside fruit with a hole at the stem end', es: 'dentro de frutos perforados junto al pedúnculo' },
  },
  {
    ...FROM_MEMORY,
    id: 'earworm-eggs-on-pepper',
    insect: EARWORM,
    crops: ['pepper'],
    stage: 'egg',
    where: { en: 'on leaves near buds and flowers', es: 'en las hojas cercanas a botones y flores' },
  },
  {
    ...FROM_MEMORY,
    id: 'earworm-small-larvae-on-pepper',
    insect: EARWORM,
    crops: ['pepper'],
    stage: 'small-larva',
    where: { en: 'on young fruit, at the cap', es: 'en los frutos tiernos, junto al cáliz' },
  },
  {
    ...FROM_MEMORY,
    id: 'cutworm-larvae-on-corn',
    insect: 'agrotis-ipsilon',
    crops: CORN,
    stage: 'larva',
    where: {
      en: 'in the soil’s top layer beside cut, notched or wilted seedlings',
      es: 'en la capa superior del suelo, junto a plántulas cortadas, mordidas o marchitas',
    },
  },
];
