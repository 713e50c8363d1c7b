import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel, Sourced } from '../../types.ts';
import { fromFirstCatch } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

const LIN_1985: Sourced = {
  source: 'Lin & Trumble 1985, from memory',
  standing: 'memory',
};

const models: readonly PhenologyModel[] = [
  fromFirstCatch(LIN_1985, {
    id: 'keiferia-lycopersicella-generation',
    insect: 'keiferia-lycopersicella',
    name: { en: 'Tomato pinworm generation', es: 'Generación del gusano alfiler del tomate' },
    lower: 10,
    upper: null,
    unit: 'C',
    eggToAdult: 450,
  }),
];

export const keiferiaLycopersicella: InsectEntry = {
  insect: {
    id: 'keiferia-lycopersicella',
    scientificName: 'Keiferia lycopersicella',
    commonName: { en: 'tomato pinworm', es: 'gusano alfiler del tomate' },
    hosts: ['tomato'],
    feedsOn: ['eggplant', 'potato'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Tiny narrow moth, about 1 cm across, ash-grey flecked with darker grey; hindwings fringed.',
        es: 'Polilla diminuta y angosta, de 1 cm de ala a ala, gris ceniza salpicada de gris más oscuro; alas traseras con flecos.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'tuta-absoluta',
        name: { en: 'tomato leafminer', es: 'palomilla minadora del tomate' },
        note: {
          en: 'Silvery; told apart with certainty only under a lens by a specialist.',
          es: 'Plateada; solo un especialista con lente la distingue con certeza.',
        },
      },
    ],
  },
  models,
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'keiferia-lycopersicella',
      id: 'tomato-pinworm-larvae',
      crops: ['tomato'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'in blotches and folds of leaves; in fruit behind a pinhole near the calyx',
        es: 'en manchas y pliegues de las hojas; en el fruto tras un agujero de alfiler cerca del cáliz',
      },
    },
  ],
};
