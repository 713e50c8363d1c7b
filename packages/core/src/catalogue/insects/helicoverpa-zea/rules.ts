import { celsius } from '../../../base/temperature.ts';
import {
  COMMON_PRACTICE,
  DELAWARE_KUHAR,
  FROM_MEMORY,
  NYSIPM_CATCHES,
  noted,
  PURDUE_HOTLINE,
  UCONN_2012,
  USDA_1976,
  unnamed,
} from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';
import { NORTHEAST_SWEET_CORN as NORTHEAST, SWEET_CORN } from '../sweet-corn.ts';

const DECIDES = { may: 'decide', maySource: NYSIPM_CATCHES } as const;
const TOMATO = { crops: ['tomato'], growthHabits: null, insect: 'helicoverpa-zea' } as const;

export const rules: readonly ActionRule[] = [
  {
    ...NORTHEAST,
    kind: 'catch-table',
    ...DECIDES,
    id: 'sweet-corn-earworm-mesh-cone',
    insect: 'helicoverpa-zea',
    stages: ['silk'],
    design: 'mesh-cone',
    tiers: [
      { from: 0.2, exclusive: false, intervalDays: 6 },
      { from: 0.5, exclusive: false, intervalDays: 5 },
      { from: 1, exclusive: false, intervalDays: 4 },
      { from: 13, exclusive: true, intervalDays: 3 },
    ],
    adjustments: [
      {
        ...noted(UCONN_2012, {
          en: 'The source says the last 2–3 days; two are taken.',
          es: 'La fuente dice los últimos 2–3 días; se toman dos.',
        }),
        when: 'maxima-below',
        temperatureC: celsius(80, 'F'),
        days: 2,
        addDays: 1,
      },
      {
        ...unnamed({
          en: 'Several days, as sweet corn updates of extension services in the Northeast say, author and year not at hand; three are taken.',
          es: 'Varios días, según los boletines de maíz dulce de servicios de extensión del noreste, sin autor ni año a mano; se toman tres.',
        }),
        when: 'maxima-above',
        temperatureC: celsius(85, 'F'),
        days: 3,
        addDays: -1,
      },
    ],
    harvestStopDays: 5,
  },
  {
    ...SWEET_CORN,
    ...PURDUE_HOTLINE,
    kind: 'catch-threshold',
    ...DECIDES,
    id: 'sweet-corn-earworm-wire-cone',
    insect: 'helicoverpa-zea',
    stages: ['silk'],
    region: 'Indiana',
    design: 'wire-cone',
    threshold: 1,
    per: 'night',
    intervalDays: null,
    unless: { nearbyCrop: 'field-corn', stages: ['silk'], threshold: 10 },
  },
  {
    ...SWEET_CORN,
    ...unnamed({
      en: 'Eggs or larvae; such a share may need a rescue treatment. Read in an extension scouting guide whose author and year are not at hand.',
      es: 'Huevos o larvas; una proporción así puede necesitar un tratamiento de rescate. Leído en una guía de muestreo de un servicio de extensión cuyo autor y año no están a mano.',
    }),
    kind: 'infestation',
    may: 'decide',
    id: 'sweet-corn-earworm-ears',
    insect: 'helicoverpa-zea',
    stages: ['silk', 'dry-silk'],
    region: '',
    unit: 'ears',
    sign: 'infested',
    share: 0.05,
    shareHigh: 0.1,
    examine: { places: 5, unitsPerPlace: 20, units: 100 },
    combinedWith: null,
  },
  {
    ...TOMATO,
    ...noted(DELAWARE_KUHAR, {
      en: 'Look below the flower clusters. The stages are read from that; "about 10 %" in the source.',
      es: 'Busque debajo de los racimos de flores. De ahí se leen las etapas; «cerca del 10 %» en la fuente.',
    }),
    kind: 'infestation',
    may: 'decide',
    decideWithin: {
      days: 2,
      ...noted(USDA_1976, {
        en: 'Eggs last 72.9 °F·d: some three days in summer, and eggs found are on average half-way. Days worked out here, not printed.',
        es: 'Los huevos duran 72.9 °F·d: unos tres días en verano, y los que se hallan van en promedio por la mitad. Los días se calcularon aquí; no están impresos.',
      }),
    },
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
    may: 'decide',
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
      es: 'Sumado de las duraciones de etapa de USDA ARS-S-127 (1976): la eclosión empieza 72.9 °F·d después de una polilla que pone enseguida, y las últimas larvas pequeñas de una capturada recién emergida terminan a 112.7 + 72.9 + 147.1 = 332.7.',
    }),
    kind: 'heat-scout',
    may: 'send-scouting',
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

const ON_CORN = { insect: 'helicoverpa-zea', crops: ['sweet-corn', 'field-corn'], unit: 'ears' } as const;
const ON_TOMATO = { insect: 'helicoverpa-zea', crops: ['tomato'] } as const;
const ON_PEPPER = { insect: 'helicoverpa-zea', crops: ['pepper'] } as const;

export const recognition: readonly Recognition[] = [
  {
    ...FROM_MEMORY,
    ...ON_CORN,
    id: 'earworm-eggs-on-corn',
    stage: 'egg',
    where: { en: 'one by one on fresh silks', es: 'uno a uno sobre los estigmas frescos' },
  },
  {
    ...FROM_MEMORY,
    ...ON_CORN,
    id: 'earworm-small-larvae-on-corn',
    stage: 'small-larva',
    where: {
      en: 'in the silks and under the husk at the tip of the ear',
      es: 'entre los estigmas y bajo las brácteas de la punta',
    },
  },
  {
    ...FROM_MEMORY,
    ...ON_CORN,
    id: 'earworm-large-larvae-on-corn',
    stage: 'large-larva',
    where: { en: 'inside the ear, from the tip down', es: 'dentro de la mazorca, desde la punta hacia abajo' },
  },
  {
    ...noted(DELAWARE_KUHAR, {
      en: 'Below the flower clusters is the source’s; looking at both sides is common practice, no source.',
      es: 'Debajo de los racimos de flores es de la fuente; revisar ambas caras es práctica común, sin fuente.',
    }),
    ...ON_TOMATO,
    id: 'fruitworm-eggs-on-tomato',
    stage: 'egg',
    unit: 'plants',
    where: {
      en: 'on the leaves just below the flower clusters, on both sides of the leaf',
      es: 'en las hojas justo debajo de los racimos de flores, por ambas caras',
    },
  },
  {
    ...FROM_MEMORY,
    ...ON_TOMATO,
    id: 'fruitworm-small-larvae-on-tomato',
    stage: 'small-larva',
    unit: 'fruit',
    where: { en: 'on young green fruit, at the stem end', es: 'en los frutos verdes tiernos, junto al pedúnculo' },
  },
  {
    ...noted(DELAWARE_KUHAR, {
      en: 'Unripe fruit is the source’s; what the damage looks like is common practice, no source.',
      es: 'El fruto verde es de la fuente; cómo se ve el daño es práctica común, sin fuente.',
    }),
    ...ON_TOMATO,
    id: 'fruitworm-large-larvae-on-tomato',
    stage: 'large-larva',
    unit: 'fruit',
    where: {
      en: 'inside unripe fruit with a hole, often near the stem end',
      es: 'dentro de frutos verdes perforados, a menudo junto al pedúnculo',
    },
  },
  {
    ...FROM_MEMORY,
    ...ON_PEPPER,
    id: 'earworm-eggs-on-pepper',
    stage: 'egg',
    unit: 'plants',
    where: { en: 'on leaves near buds and flowers', es: 'en las hojas cercanas a botones y flores' },
  },
  {
    ...FROM_MEMORY,
    ...ON_PEPPER,
    id: 'earworm-small-larvae-on-pepper',
    stage: 'small-larva',
    unit: 'fruit',
    where: { en: 'on young fruit, at the cap', es: 'en los frutos tiernos, junto al cáliz' },
  },
];
