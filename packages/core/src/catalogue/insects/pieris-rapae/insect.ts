import { FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

export const pierisRapae: InsectEntry = {
  insect: {
    id: 'pieris-rapae',
    scientificName: 'Pieris rapae',
    commonName: { en: 'imported cabbageworm', es: 'gusano importado de la col' },
    hosts: ['brassicas'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'White butterfly, about 4.5 cm across, flies by day. Forewing tips dark; one dark spot on each forewing of a male, two on a female’s.',
        es: 'Mariposa blanca, de unos 4.5 cm de ala a ala, vuela de día. Puntas de las alas delanteras oscuras; una mancha oscura en cada ala delantera del macho, dos en la hembra.',
      },
    },
    lookAlikes: [],
  },
  models: [],
  rules,
  recognition,
};
