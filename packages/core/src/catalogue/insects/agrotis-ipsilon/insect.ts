import type { HeatRule } from '../../../heat/types.ts';
import { CUTWORM_EXTENSION, FROM_MEMORY, LUCKMANN_1976, STORY_1984 } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

const BASE_50: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 50, upper: null, unit: 'F' };

const models: readonly PhenologyModel[] = [
  {
    ...CUTWORM_EXTENSION,
    id: 'agrotis-ipsilon-cutting-stages',
    insect: 'agrotis-ipsilon',
    name: {
      en: 'Black cutworm cutting after an intense capture',
      es: 'Corte del gusano trozador negro tras una captura intensa',
    },
    heat: BASE_50,
    start: { kind: 'biofix' },
    events: [
      { event: 'small-larvae', generation: 1, from: 91, to: 311 },
      { event: 'first-cutting', generation: 1, from: 312, to: 364 },
      { event: 'cutting', generation: 1, from: 365, to: 430 },
      { event: 'cutting-slows', generation: 1, from: 431, to: 640 },
      { event: 'cutting-stops', generation: 1, from: 641, to: 989 },
    ],
    stages: [],
    note: {
      en: 'The finer of two tables with one biofix and base. Small larvae are instars 1–3.',
      es: 'La más detallada de dos tablas con el mismo biofix y la misma base. Las larvas pequeñas son los estadios 1–3.',
    },
  },
  {
    ...CUTWORM_EXTENSION,
    id: 'agrotis-ipsilon-first-cutting',
    insect: 'agrotis-ipsilon',
    name: { en: 'Black cutworm first cutting, one figure', es: 'Primer corte del gusano trozador negro, una sola cifra' },
    heat: BASE_50,
    start: { kind: 'biofix' },
    events: [{ event: 'first-cutting', generation: 1, from: 300, to: null, approximate: true }],
    stages: [],
    note: {
      en: 'The rounded figure that published maps are drawn with.',
      es: 'La cifra redondeada con la que se dibujan los mapas publicados.',
    },
  },
  {
    ...STORY_1984,
    id: 'agrotis-ipsilon-calendar',
    insect: 'agrotis-ipsilon',
    name: { en: 'Black cutworm from 1 January', es: 'Gusano trozador negro desde el 1 de enero' },
    heat: { method: 'single-sine', cutoff: 'none', lower: 50.7, upper: null, unit: 'F' },
    start: { kind: 'calendar', month: 1, date: 1 },
    events: [
      { event: 'set-out-traps', generation: 1, from: 90, to: null },
      { event: 'large-larvae', generation: 1, from: 225, to: null },
    ],
    stages: [],
    note: {
      en: 'Field study; a date by which traps should hang. Large larvae are instars 4–5.',
      es: 'Estudio de campo; una fecha antes de la cual deben colgarse las trampas. Las larvas grandes son los estadios 4–5.',
    },
  },
  {
    ...LUCKMANN_1976,
    id: 'agrotis-ipsilon-life-stages',
    insect: 'agrotis-ipsilon',
    name: { en: 'Black cutworm life stages', es: 'Etapas de vida del gusano trozador negro' },
    heat: { method: 'single-sine', cutoff: 'horizontal', lower: 50.7, upper: 86, unit: 'F' },
    start: { kind: 'stage' },
    events: [],
    stages: [
      { stage: 'egg', lasts: 93.6 },
      { stage: 'larva', lasts: 635.4 },
      { stage: 'pupa', lasts: 428.4 },
    ],
    note: { en: 'Laboratory study.', es: 'Estudio de laboratorio.' },
  },
];

export const agrotisIpsilon: InsectEntry = {
  insect: {
    id: 'agrotis-ipsilon',
    scientificName: 'Agrotis ipsilon',
    commonName: { en: 'black cutworm', es: 'gusano trozador negro' },
    hosts: ['sweet-corn', 'field-corn'],
    feedsOn: [
      'tomato',
      'pepper',
      'potato',
      'squash',
      'pumpkin',
      'brassicas',
      'beans',
      'peas',
      'beet',
      'lettuce',
      'onion',
      'eggplant',
    ],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'intense-capture', moths: 9, nights: 2 }, ...CUTWORM_EXTENSION },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Long narrow dark forewings, about 4.5 cm across, paler in the outer third. A small black dagger points outward from the kidney-shaped spot. Hindwing whitish grey.',
        es: 'Alas delanteras largas, angostas y oscuras, de unos 4.5 cm de ala a ala, más claras en el tercio exterior. Una pequeña daga negra apunta hacia afuera desde la mancha en forma de riñón. Ala trasera gris blanquecina.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'peridroma-saucia',
        name: { en: 'variegated cutworm', es: 'gusano cortador variegado' },
        note: {
          en: 'No dagger; the front edge of the forewing darker, the hindwing pearly and nearly clear.',
          es: 'Sin daga; el borde delantero del ala más oscuro, el ala trasera nacarada y casi transparente.',
        },
      },
      {
        ...FROM_MEMORY,
        insect: 'agrotis-segetum',
        name: { en: 'turnip moth', es: 'polilla del nabo' },
        note: {
          en: 'A ring, a kidney and a short club on the forewing, but no dagger beyond the kidney.',
          es: 'Un anillo, un riñón y un mazo corto en el ala delantera, pero ninguna daga después del riñón.',
        },
      },
    ],
  },
  models,
  rules,
  recognition,
};
