import { FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

export const plutellaXylostella: InsectEntry = {
  insect: {
    id: 'plutella-xylostella',
    scientificName: 'Plutella xylostella',
    commonName: { en: 'diamondback moth', es: 'palomilla dorso de diamante' },
    hosts: ['brassicas'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Slender moth, about 1.5 cm across, feelers held forward. Folded, the wings show a row of pale diamonds along the back and turn up at the end.',
        es: 'Polilla esbelta, de unos 1.5 cm de ala a ala, con las antenas hacia adelante. Con las alas plegadas muestra una hilera de rombos pálidos en el dorso y las puntas se levantan.',
      },
    },
    lookAlikes: [],
  },
  models: [],
  rules,
  recognition,
};
