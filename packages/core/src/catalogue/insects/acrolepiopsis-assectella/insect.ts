import { COMMON_PRACTICE, FROM_MEMORY, published } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { fromFirstCatch } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

const MASON_2010 = published('Mason et al. 2010, Can. Entomol. 142:393–404', {
  author: 'Mason et al.',
  year: 2010,
  title: null,
  where: 'Can. Entomol. 142:393–404',
});

const models: readonly PhenologyModel[] = [
  fromFirstCatch(MASON_2010, {
    id: 'acrolepiopsis-assectella-generation',
    insect: 'acrolepiopsis-assectella',
    name: { en: 'Leek moth generation', es: 'Generación de la polilla del puerro' },
    lower: 7,
    upper: null,
    unit: 'C',
    eggToAdult: 444.6,
  }),
];

export const acrolepiopsisAssectella: InsectEntry = {
  insect: {
    id: 'acrolepiopsis-assectella',
    scientificName: 'Acrolepiopsis assectella',
    commonName: { en: 'leek moth', es: 'polilla del puerro' },
    hosts: ['leek', 'onion', 'garlic'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Small speckled brown moth, about 1.5 cm across. A white wedge on the hind edge of each forewing; on folded wings the two make one white mark on the back.',
        es: 'Polilla pequeña, café jaspeada, de 1.5 cm de ala a ala. Una cuña blanca en el borde posterior de cada ala delantera; con las alas plegadas las dos forman una sola marca blanca en el dorso.',
      },
    },
    lookAlikes: [],
  },
  models,
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'acrolepiopsis-assectella',
      id: 'leek-moth-larvae-on-leaves',
      crops: ['leek', 'onion', 'garlic'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'in mines and pale windows of the leaves, or in the fold of the youngest, with droppings',
        es: 'en minas y ventanas pálidas de las hojas, o en el pliegue de la más joven, con excremento',
      },
    },
  ],
};
