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
    lookAlikes: [],
  },
  models: [],
  rules,
  recognition,
};
