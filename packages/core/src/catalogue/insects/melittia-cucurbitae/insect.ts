import type { HeatRule } from '../../../heat/types.ts';
import { COMMON_PRACTICE, FROM_MEMORY, noted, SDSU_2021 } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

const BASE_50: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 50, upper: null, unit: 'F' };
const HATCH = { from: 245, to: 300 } as const;

const models: readonly PhenologyModel[] = [
  {
    ...SDSU_2021,
    id: 'melittia-cucurbitae-emergence',
    insect: 'melittia-cucurbitae',
    name: { en: 'Squash vine borer emergence', es: 'Emergencia del barrenador de la guía de la calabaza' },
    heat: BASE_50,
    start: { kind: 'calendar', month: 1, date: 1 },
    startSource: noted(COMMON_PRACTICE, {
      en: 'The source as noted names no first day; spring sums are taken from 1 January.',
      es: 'La fuente, según lo anotado, no nombra un primer día; las sumas de primavera se toman desde el 1 de enero.',
    }),
    events: [{ event: 'adult-emergence', generation: 1, from: 1000, to: null, approximate: true }],
    stages: [],
    note: null,
  },
  {
    ...SDSU_2021,
    id: 'melittia-cucurbitae-life-stages',
    insect: 'melittia-cucurbitae',
    name: { en: 'Squash vine borer after egg laying', es: 'Barrenador de la guía de la calabaza tras la puesta' },
    heat: BASE_50,
    start: { kind: 'stage' },
    events: [{ event: 'egg-hatch', generation: null, ...HATCH }],
    stages: [
      { stage: 'larva', lasts: 660 },
      { stage: 'pupa', lasts: 745 },
    ],
    note: { en: 'Counted from the laying of an egg.', es: 'Se cuenta desde la puesta de un huevo.' },
  },
  {
    ...COMMON_PRACTICE,
    id: 'melittia-cucurbitae-from-catch',
    insect: 'melittia-cucurbitae',
    name: { en: 'Squash vine borer from first catch', es: 'Barrenador de la guía de la calabaza desde la primera captura' },
    heat: BASE_50,
    start: { kind: 'biofix' },
    events: [{ event: 'egg-hatch', generation: 1, ...HATCH }],
    stages: [],
    note: {
      en: 'The hatching time of South Dakota State Univ. Extension 2021, counted as if the first eggs were laid when the first moth was caught; the source does not say so.',
      es: 'El tiempo de eclosión de South Dakota State Univ. Extension 2021, contado como si los primeros huevos se pusieran al capturar la primera polilla; la fuente no lo dice.',
    },
  },
];

export const melittiaCucurbitae: InsectEntry = {
  insect: {
    id: 'melittia-cucurbitae',
    scientificName: 'Melittia cucurbitae',
    commonName: { en: 'squash vine borer', es: 'barrenador de la guía de la calabaza' },
    hosts: ['squash', 'pumpkin'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Flies by day and looks like a wasp. Forewings dark metallic green, hindwings clear; abdomen orange with black dots; hind legs thick with orange and black hair.',
        es: 'Vuela de día y parece avispa. Alas delanteras verde metálico oscuro, traseras transparentes; abdomen anaranjado con puntos negros; patas traseras gruesas con pelo anaranjado y negro.',
      },
    },
    lookAlikes: [],
  },
  models,
  rules,
  recognition,
};
