import { FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel, Sourced } from '../../types.ts';
import { oneStage } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

/** The thresholds were read in the paper, the sums are recalled: together they are no better than recalled. */
const DU_PLESSIS_2020: Sourced = {
  source: 'du Plessis, Schlemmer & Van den Berg 2020, Insects 11(4):228, doi 10.3390/insects11040228, sums from memory',
  standing: 'memory',
};

const models: readonly PhenologyModel[] = [
  oneStage(DU_PLESSIS_2020, {
    id: 'spodoptera-frugiperda-egg',
    insect: 'spodoptera-frugiperda',
    name: { en: 'Fall armyworm eggs', es: 'Huevos del gusano cogollero' },
    lower: 13.01,
    unit: 'C',
    stage: 'egg',
    lasts: 35.7,
  }),
  oneStage(DU_PLESSIS_2020, {
    id: 'spodoptera-frugiperda-larva',
    insect: 'spodoptera-frugiperda',
    name: { en: 'Fall armyworm larvae', es: 'Larvas del gusano cogollero' },
    lower: 12.12,
    unit: 'C',
    stage: 'larva',
    lasts: 204.6,
  }),
  oneStage(DU_PLESSIS_2020, {
    id: 'spodoptera-frugiperda-pupa',
    insect: 'spodoptera-frugiperda',
    name: { en: 'Fall armyworm pupae', es: 'Pupas del gusano cogollero' },
    lower: 13.06,
    unit: 'C',
    stage: 'pupa',
    lasts: 150.5,
  }),
  {
    ...DU_PLESSIS_2020,
    id: 'spodoptera-frugiperda-generation',
    insect: 'spodoptera-frugiperda',
    name: { en: 'Fall armyworm from egg to adult', es: 'Gusano cogollero de huevo a adulto' },
    heat: { method: 'single-sine', cutoff: 'none', lower: 12.57, upper: null, unit: 'C' },
    start: { kind: 'stage' },
    events: [{ event: 'next-adults', generation: null, from: 391.6, to: null, approximate: true }],
    stages: [],
    note: {
      en: 'Counted from the laying of an egg, by larvae reared on sweet corn kernels. It dates nothing: when moths that came on the wind laid, no trap says.',
      es: 'Se cuenta desde la puesta de un huevo, con larvas criadas en granos de maíz dulce. No fecha nada: cuándo pusieron las palomillas que trajo el viento, no lo dice ninguna trampa.',
    },
  },
];

export const spodopteraFrugiperda: InsectEntry = {
  insect: {
    id: 'spodoptera-frugiperda',
    scientificName: 'Spodoptera frugiperda',
    commonName: { en: 'fall armyworm', es: 'gusano cogollero' },
    hosts: ['sweet-corn', 'field-corn'],
    feedsOn: ['tomato', 'pepper', 'potato', 'squash', 'pumpkin', 'brassicas', 'beans'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Mottled grey-brown male, about 3.5 cm across, with a white patch at the tip of the forewing and a pale slanting mark in its middle. Hindwing shining white with a thin dark edge.',
        es: 'Macho jaspeado gris y café, de unos 3.5 cm de ala a ala, con una mancha blanca en la punta del ala delantera y una marca pálida oblicua en medio. Ala trasera blanca brillante con borde fino oscuro.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'spodoptera-exigua',
        name: { en: 'beet armyworm', es: 'gusano soldado' },
        note: {
          en: 'Smaller; a round pale spot, often orange-tinged, beside a kidney-shaped one, and no white at the tip.',
          es: 'Más pequeña; una mancha redonda pálida, a menudo anaranjada, junto a una en forma de riñón, y nada blanco en la punta.',
        },
      },
      {
        ...FROM_MEMORY,
        insect: 'mythimna-unipuncta',
        name: { en: 'armyworm', es: 'gusano soldado común' },
        note: {
          en: 'Sandy to reddish, with one small white dot in the middle of the forewing.',
          es: 'Arenosa a rojiza, con un solo punto blanco en medio del ala delantera.',
        },
      },
    ],
  },
  models,
  rules,
  recognition,
};
