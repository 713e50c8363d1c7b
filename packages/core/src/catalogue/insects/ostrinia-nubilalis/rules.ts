import { APPLE_UW, COMMON_PRACTICE, MAINE_POTATO, noted } from '../../sources/sources.ts';
import type { ActionRule, Recognition } from '../../types.ts';
import { FIVE_PLACES_OF_TWENTY } from '../sample-size.ts';
import { infestedPlants, NORTHEAST_SWEET_CORN as NORTHEAST, SENDS_SCOUTING, SWEET_CORN } from '../sweet-corn.ts';

const POTATO = {
  crops: ['potato'],
  growthHabits: null,
  insect: 'ostrinia-nubilalis',
  stages: null,
  region: 'Maine',
} as const;

export const rules: readonly ActionRule[] = [
  {
    ...NORTHEAST,
    kind: 'catch-threshold',
    ...SENDS_SCOUTING,
    id: 'sweet-corn-corn-borer-catch',
    insect: 'ostrinia-nubilalis',
    stages: ['silk'],
    design: null,
    threshold: 35,
    per: 'week',
    intervalDays: null,
    unless: null,
  },
  infestedPlants('sweet-corn-corn-borer-whorl', 'ostrinia-nubilalis', ['whorl'], 0.3),
  infestedPlants('sweet-corn-corn-borer-tassel', 'ostrinia-nubilalis', ['tassel'], 0.15),
  ...(
    [
      [1, 800, 1000],
      [2, 1550, 2100],
    ] as const
  ).map(
    ([generation, from, to]): ActionRule => ({
      ...SWEET_CORN,
      ...APPLE_UW,
      note: {
        en: 'The window is the published treatment period; the stages and what to look for are those of the infestation rule.',
        es: 'La ventana es el período de tratamiento publicado; las etapas y lo que se busca son los de la regla de infestación.',
      },
      kind: 'heat-scout',
      may: 'send-scouting',
      id: `sweet-corn-corn-borer-heat-${generation}`,
      insect: 'ostrinia-nubilalis',
      stages: ['whorl', 'tassel'],
      region: 'Wisconsin',
      modelId: 'ostrinia-nubilalis-calendar',
      from,
      to,
      lookFor: 'treatment-period',
      examineUnits: FIVE_PLACES_OF_TWENTY.examine.units,
      examineSource: FIVE_PLACES_OF_TWENTY.examineSource,
    }),
  ),
  {
    ...POTATO,
    ...noted(MAINE_POTATO, {
      en: 'In a pheromone trap; which design is not stated.',
      es: 'En una trampa de feromona; no se indica el diseño.',
    }),
    kind: 'catch-threshold',
    may: 'send-scouting',
    maySource: noted(COMMON_PRACTICE, {
      en: 'As the source has a figure for eggs on the plants too, the catch sends people to look for them; it does not say so itself.',
      es: 'Como la fuente tiene también una cifra de huevos en las plantas, la captura manda a buscarlos; ella misma no lo dice.',
    }),
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
    may: 'decide',
    decideWithin: {
      days: 3,
      ...noted(APPLE_UW, {
        en: 'Eggs hatch about 100 °F·d after they are laid (1450 to 1550 in the table): some five days in summer, and eggs found are on average half-way. Days worked out here, not printed.',
        es: 'Los huevos eclosionan unos 100 °F·d después de puestos (de 1450 a 1550 en la tabla): unos cinco días en verano, y los que se hallan van en promedio por la mitad. Los días se calcularon aquí; no están impresos.',
      }),
    },
    id: 'potato-corn-borer-egg-masses',
    unit: 'plants',
    sign: 'egg-masses',
    share: 1 / 15,
    shareHigh: null,
    combinedWith: null,
    ...FIVE_PLACES_OF_TWENTY,
  },
];

export const recognition: readonly Recognition[] = [
  {
    ...COMMON_PRACTICE,
    insect: 'ostrinia-nubilalis',
    id: 'corn-borer-larvae-on-corn',
    crops: ['sweet-corn', 'field-corn'],
    stage: 'larva',
    unit: 'plants',
    where: {
      en: 'in the whorl or the tassel, behind fine holes and sawdust-like droppings; pull the whorl leaf or open the tassel where in doubt',
      es: 'en el cogollo o la espiga, tras agujeros finos y excremento como aserrín; en caso de duda, saque la hoja del cogollo o abra la espiga',
    },
  },
  {
    ...COMMON_PRACTICE,
    insect: 'ostrinia-nubilalis',
    id: 'corn-borer-eggs-on-potato-and-pepper',
    crops: ['potato', 'pepper'],
    stage: 'egg',
    unit: 'plants',
    where: {
      en: 'in flat clusters, like fish scales, on the undersides of leaves',
      es: 'en masas planas, como escamas de pez, en el envés de las hojas',
    },
  },
];
