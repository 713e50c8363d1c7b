import { COMMON_PRACTICE, FROM_MEMORY, published } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { fromFirstCatch } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

const GOLIZADEH_2007 = published('Golizadeh et al. 2007, Insect Science, doi 10.1111/j.1744-7917.2007.00157.x', {
  author: 'Golizadeh et al.',
  year: 2007,
  title: null,
  where: 'Insect Science, doi 10.1111/j.1744-7917.2007.00157.x',
});
const MARCHIORO_2011 = published('Marchioro & Foerster 2011, Neotrop. Entomol. 40(5)', {
  author: 'Marchioro & Foerster',
  year: 2011,
  title: null,
  where: 'Neotrop. Entomol. 40(5)',
});

/** Sources and host plants differ; none is preferred. */
const models: readonly PhenologyModel[] = [
  fromFirstCatch(GOLIZADEH_2007, {
    id: 'plutella-xylostella-on-cauliflower',
    insect: 'plutella-xylostella',
    name: { en: 'Diamondback moth generation, on cauliflower', es: 'Generación de la palomilla dorso de diamante, en coliflor' },
    lower: 7.06,
    upper: null,
    unit: 'C',
    eggToAdult: 263.7,
  }),
  fromFirstCatch(GOLIZADEH_2007, {
    id: 'plutella-xylostella-on-cabbage',
    insect: 'plutella-xylostella',
    name: { en: 'Diamondback moth generation, on cabbage', es: 'Generación de la palomilla dorso de diamante, en col' },
    lower: 7.84,
    upper: null,
    unit: 'C',
    eggToAdult: 261.6,
  }),
  fromFirstCatch(MARCHIORO_2011, {
    id: 'plutella-xylostella-subtropical',
    insect: 'plutella-xylostella',
    name: {
      en: 'Diamondback moth generation, a subtropical strain',
      es: 'Generación de la palomilla dorso de diamante, una cepa subtropical',
    },
    lower: 6.3,
    upper: null,
    unit: 'C',
    eggToAdult: 312.5,
  }),
];

export const plutellaXylostella: InsectEntry = {
  insect: {
    id: 'plutella-xylostella',
    scientificName: 'Plutella xylostella',
    commonName: { en: 'diamondback moth', es: 'palomilla dorso de diamante' },
    hosts: ['brassicas'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Slender moth, about 1.5 cm across, feelers held forward. Folded, the wings show a row of pale diamonds along the back and turn up at the end.',
        es: 'Polilla esbelta, de unos 1.5 cm de ala a ala, con las antenas hacia adelante. Con las alas plegadas muestra una hilera de rombos pálidos en el dorso y las puntas se levantan.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'acrolepiopsis-assectella',
        name: { en: 'leek moth', es: 'polilla del puerro' },
        note: {
          en: 'A white spot halfway along the back of the folded wings, and no row of diamonds.',
          es: 'Una mancha blanca a media altura del dorso de las alas plegadas, y ninguna fila de rombos.',
        },
      },
    ],
  },
  models,
  rules,
  recognition,
};
