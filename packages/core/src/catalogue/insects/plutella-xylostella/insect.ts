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
    lookAlikes: [],
  },
  models: [],
  rules,
  recognition,
};
