import { celsius } from '../../base/temperature.ts';
import { APPLE_UW, MAINE_2017, NORTHEAST_UPDATES, noted, PURDUE_HOTLINE, SCOUTING_GUIDE, UCONN_2012 } from '../sources.ts';
import type { ActionRule, InfestationRule } from '../types.ts';
import { FIVE_PLACES_OF_TWENTY } from './sample-size.ts';

const SWEET_CORN = { crops: ['sweet-corn'], growthHabits: null } as const;
const NORTHEAST = { ...SWEET_CORN, region: 'Northeastern United States', preferred: true, ...UCONN_2012 } as const;

const infestedPlants = (
  id: string,
  insect: string,
  stages: readonly string[],
  share: number,
  combinedWith: InfestationRule['combinedWith'] = null,
): InfestationRule => ({
  ...NORTHEAST,
  note: stages.includes('tassel')
    ? {
        en: 'The source speaks of the time before tassel: held here from the tassel showing until silk.',
        es: 'La fuente habla del tiempo anterior a la espiga: aquí se aplica desde que asoma la espiga hasta el jilote.',
      }
    : null,
  kind: 'infestation',
  id,
  insect,
  stages,
  unit: 'plants',
  sign: 'infested',
  share,
  shareHigh: null,
  combinedWith,
  ...FIVE_PLACES_OF_TWENTY,
});

const earworm: readonly ActionRule[] = [
  {
    ...NORTHEAST,
    kind: 'catch-table',
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
        ...noted(NORTHEAST_UPDATES, {
          en: 'The source says several days; reading that as three is common practice, no source.',
          es: 'La fuente dice varios días; leerlo como tres es práctica común, sin fuente.',
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
    id: 'sweet-corn-earworm-wire-cone',
    insect: 'helicoverpa-zea',
    stages: ['silk'],
    region: 'Indiana',
    preferred: true,
    design: 'wire-cone',
    threshold: 1,
    per: 'night',
    intervalDays: null,
    unless: { nearbyCrop: 'field-corn', stages: ['silk'], threshold: 10 },
  },
  {
    ...SWEET_CORN,
    ...noted(SCOUTING_GUIDE, {
      en: 'Eggs or larvae. The source says that such a share may need rescue treatment.',
      es: 'Huevos o larvas. La fuente dice que una proporción así puede necesitar un tratamiento de rescate.',
    }),
    kind: 'infestation',
    id: 'sweet-corn-earworm-ears',
    insect: 'helicoverpa-zea',
    stages: ['silk', 'dry-silk'],
    region: '',
    preferred: true,
    unit: 'ears',
    sign: 'infested',
    share: 0.05,
    shareHigh: 0.1,
    examine: { places: 5, unitsPerPlace: 20, units: 100 },
    combinedWith: null,
  },
];

const cornBorer: readonly ActionRule[] = [
  {
    ...NORTHEAST,
    kind: 'catch-threshold',
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
      id: `sweet-corn-corn-borer-heat-${generation}`,
      insect: 'ostrinia-nubilalis',
      stages: ['whorl', 'tassel'],
      region: 'Wisconsin',
      preferred: true,
      modelId: 'ostrinia-nubilalis-calendar',
      from,
      to,
      lookFor: 'treatment-period',
      examineUnits: FIVE_PLACES_OF_TWENTY.examine.units,
      examineSource: FIVE_PLACES_OF_TWENTY.examineSource,
    }),
  ),
];

const fallArmyworm: readonly ActionRule[] = [
  {
    ...NORTHEAST,
    kind: 'catch-threshold',
    id: 'sweet-corn-fall-armyworm-catch',
    insect: 'spodoptera-frugiperda',
    stages: ['silk'],
    design: null,
    threshold: 50,
    per: 'week',
    intervalDays: null,
    unless: null,
  },
  {
    ...SWEET_CORN,
    ...MAINE_2017,
    kind: 'catch-threshold',
    id: 'sweet-corn-fall-armyworm-catch-maine',
    insect: 'spodoptera-frugiperda',
    stages: ['silk'],
    region: 'Maine',
    preferred: false,
    design: null,
    threshold: 3,
    per: 'week',
    intervalDays: null,
    unless: null,
  },
  infestedPlants('sweet-corn-fall-armyworm-plants', 'spodoptera-frugiperda', ['whorl', 'tassel'], 0.1, {
    insect: 'ostrinia-nubilalis',
    share: 0.15,
  }),
];

export const sweetCornRules: readonly ActionRule[] = [...earworm, ...cornBorer, ...fallArmyworm];
