import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel, Sourced } from '../../types.ts';
import { fromFirstCatch } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

const HOGG_1980: Sourced = {
  source: 'Hogg & Gutierrez 1980, Hilgardia 48(4), figures from memory',
  standing: 'memory',
};

const models: readonly PhenologyModel[] = [
  fromFirstCatch(HOGG_1980, {
    id: 'spodoptera-exigua-generation',
    insect: 'spodoptera-exigua',
    name: { en: 'Beet armyworm generation', es: 'Generación del gusano soldado' },
    lower: 54,
    upper: null,
    unit: 'F',
    eggToAdult: 975,
  }),
];

export const spodopteraExigua: InsectEntry = {
  insect: {
    id: 'spodoptera-exigua',
    scientificName: 'Spodoptera exigua',
    commonName: { en: 'beet armyworm', es: 'gusano soldado de la remolacha' },
    hosts: ['tomato', 'pepper', 'beet', 'onion'],
    feedsOn: ['lettuce', 'beans', 'peas', 'brassicas', 'eggplant', 'potato', 'sweet-corn', 'field-corn'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Slender grey-brown moth, about 3 cm across. A round pale spot, often orange-tinged, in the middle of the forewing beside a kidney-shaped one; hindwings white with a thin dark edge.',
        es: 'Polilla esbelta gris café, de 3 cm de ala a ala. Una mancha redonda pálida, a menudo anaranjada, en medio del ala delantera junto a otra en forma de riñón; alas traseras blancas con un borde oscuro fino.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'spodoptera-frugiperda',
        name: { en: 'fall armyworm', es: 'gusano cogollero' },
        note: {
          en: 'Larger; the male has a white patch at the tip of the forewing and a slanting pale line in it.',
          es: 'Más grande; el macho tiene una mancha blanca en la punta del ala delantera y una línea pálida inclinada.',
        },
      },
    ],
  },
  models,
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'spodoptera-exigua',
      id: 'beet-armyworm-eggs-on-leaves',
      crops: ['tomato', 'pepper', 'beet', 'onion'],
      stage: 'egg',
      unit: 'plants',
      where: {
        en: 'in clusters under pale fuzz on leaves',
        es: 'en grupos bajo pelusa pálida en las hojas',
      },
    },
    {
      ...COMMON_PRACTICE,
      insect: 'spodoptera-exigua',
      id: 'beet-armyworm-larvae-on-leaves',
      crops: ['tomato', 'pepper', 'beet', 'onion'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'feeding together on webbed leaves when young, later alone, also on the surface of fruit',
        es: 'juntas en hojas con seda cuando son jóvenes, después solas, también en la superficie del fruto',
      },
    },
  ],
};
