import { COMMON_PRACTICE, CUTWORM_EXTENSION, DELAWARE_KUHAR, MAINE_POTATO, noted, SDSU_2021, UNH_EXTENSION } from '../sources.ts';
import type { ActionRule } from '../types.ts';
import { FIVE_PLACES_OF_TWENTY } from './sample-size.ts';

const TOMATO = { crops: ['tomato'], growthHabits: null, insect: 'helicoverpa-zea', preferred: true } as const;

const tomatoFruitworm: readonly ActionRule[] = [
  {
    ...TOMATO,
    ...noted(DELAWARE_KUHAR, {
      en: 'Look below the flower clusters. The stages are read from that; "about 10 %" in the source.',
      es: 'Busque debajo de los racimos de flores. De ahí se leen las etapas; «cerca del 10 %» en la fuente.',
    }),
    kind: 'infestation',
    id: 'tomato-fruitworm-eggs',
    region: 'Delaware',
    stages: ['flowering', 'fruiting'],
    unit: 'plants',
    sign: 'eggs',
    share: 0.1,
    shareHigh: null,
    examine: { places: null, unitsPerPlace: null, units: 20, unitsHigh: 30 },
    combinedWith: null,
  },
  {
    ...TOMATO,
    ...noted(DELAWARE_KUHAR, {
      en: 'Three damaged per hundred unripe fruit, later in the season.',
      es: 'Tres dañados por cada cien frutos verdes, más avanzada la temporada.',
    }),
    kind: 'infestation',
    id: 'tomato-fruitworm-fruit',
    region: 'Delaware',
    stages: ['fruiting', 'ripening'],
    unit: 'fruit',
    sign: 'damaged',
    share: 0.03,
    shareHigh: null,
    examine: { places: null, unitsPerPlace: null, units: 100 },
    combinedWith: null,
  },
  {
    ...TOMATO,
    ...noted(COMMON_PRACTICE, {
      en: 'Added up from the stage lengths of USDA ARS-S-127 (1976): hatch begins 72.9 °F·d after a moth that lays at once, and the last small larvae of one caught newly emerged end at 112.7 + 72.9 + 147.1 = 332.7.',
      es: 'Sumado de las duraciones de etapa de USDA ARS-S-127 (1976): la eclosión empieza 72,9 °F·d después de una polilla que pone enseguida, y las últimas larvas pequeñas de una capturada recién emergida terminan a 112,7 + 72,9 + 147,1 = 332,7.',
    }),
    kind: 'heat-scout',
    id: 'tomato-fruitworm-heat',
    region: '',
    stages: ['flowering', 'fruiting'],
    modelId: 'helicoverpa-zea-from-catch',
    from: 72.9,
    to: 332.7,
    lookFor: 'small-larvae',
    examineUnits: 20,
    examineSource: DELAWARE_KUHAR,
  },
];

const CUCURBITS = { crops: ['squash', 'pumpkin'], insect: 'melittia-cucurbitae', stages: null, preferred: true } as const;
const UNH_CATCH = {
  ...CUCURBITS,
  ...UNH_EXTENSION,
  kind: 'catch-threshold',
  region: 'New Hampshire',
  design: null,
  per: 'week',
  intervalDays: null,
  unless: null,
} as const;

const squashVineBorer: readonly ActionRule[] = [
  { ...UNH_CATCH, id: 'squash-vine-borer-bush', growthHabits: ['bush'], threshold: 5 },
  { ...UNH_CATCH, id: 'squash-vine-borer-vining', growthHabits: ['vining'], threshold: 12 },
  {
    ...CUCURBITS,
    ...noted(SDSU_2021, {
      en: 'From emergence until the latest hatch of the first eggs, 1000 + 300 °F·d: the end is added up, not printed in the source.',
      es: 'Desde la emergencia hasta la última eclosión de los primeros huevos, 1000 + 300 °F·d: el final está sumado; la fuente no lo imprime.',
    }),
    kind: 'heat-scout',
    id: 'squash-vine-borer-emergence',
    growthHabits: null,
    region: 'South Dakota',
    modelId: 'melittia-cucurbitae-emergence',
    from: 1000,
    to: 1300,
    lookFor: 'adult-emergence',
    examineUnits: null,
  },
  {
    ...CUCURBITS,
    ...noted(COMMON_PRACTICE, {
      en: 'The published 245–300 °F·d from laying to hatch, counted from the first catch; the source does not say so.',
      es: 'Los 245–300 °F·d publicados de la puesta a la eclosión, contados desde la primera captura; la fuente no lo dice.',
    }),
    kind: 'heat-scout',
    id: 'squash-vine-borer-hatch',
    growthHabits: null,
    region: '',
    modelId: 'melittia-cucurbitae-from-catch',
    from: 245,
    to: 300,
    lookFor: 'egg-hatch',
    examineUnits: null,
  },
];

const cutworm: readonly ActionRule[] = [
  {
    ...noted(CUTWORM_EXTENSION, {
      en: 'Begins at the rounded 300 °F·d of the one-figure table and ends where the finer table has cutting stop; both count base 50 °F from the same intense capture.',
      es: 'Empieza en los 300 °F·d redondeados de la tabla de una cifra y termina donde la tabla más detallada da por acabado el corte; ambas cuentan sobre base de 50 °F desde la misma captura intensa.',
    }),
    kind: 'heat-scout',
    id: 'corn-black-cutworm-cutting',
    insect: 'agrotis-ipsilon',
    crops: ['sweet-corn', 'field-corn'],
    growthHabits: null,
    stages: null,
    region: 'Midwestern United States',
    preferred: true,
    modelId: 'agrotis-ipsilon-cutting-stages',
    from: 300,
    to: 641,
    lookFor: 'first-cutting',
    examineUnits: null,
  },
];

const POTATO = {
  crops: ['potato'],
  growthHabits: null,
  insect: 'ostrinia-nubilalis',
  stages: null,
  region: 'Maine',
  preferred: true,
} as const;

const potatoCornBorer: readonly ActionRule[] = [
  {
    ...POTATO,
    ...noted(MAINE_POTATO, {
      en: 'In a pheromone trap; which design is not stated.',
      es: 'En una trampa de feromona; no se indica el diseño.',
    }),
    kind: 'catch-threshold',
    id: 'potato-corn-borer-catch',
    design: null,
    threshold: 60,
    per: 'week',
    intervalDays: null,
    unless: null,
  },
  {
    ...POTATO,
    ...noted(MAINE_POTATO, {
      en: 'One egg mass per 15 plants: masses found, over plants looked at.',
      es: 'Una masa de huevos por cada 15 plantas: masas halladas entre plantas revisadas.',
    }),
    kind: 'infestation',
    id: 'potato-corn-borer-egg-masses',
    unit: 'plants',
    sign: 'egg-masses',
    share: 1 / 15,
    shareHigh: null,
    combinedWith: null,
    ...FIVE_PLACES_OF_TWENTY,
  },
];

export const otherCropRules: readonly ActionRule[] = [...tomatoFruitworm, ...squashVineBorer, ...cutworm, ...potatoCornBorer];
