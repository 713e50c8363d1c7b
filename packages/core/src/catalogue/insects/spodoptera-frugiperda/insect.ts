import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

export const spodopteraFrugiperda: InsectEntry = {
  insect: {
    id: 'spodoptera-frugiperda',
    scientificName: 'Spodoptera frugiperda',
    commonName: { en: 'fall armyworm', es: 'gusano cogollero' },
    hosts: ['sweet-corn', 'field-corn'],
    feedsOn: ['tomato', 'pepper', 'potato', 'squash', 'pumpkin', 'brassicas'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    lookAlikes: [],
  },
  models: [],
  rules,
  recognition,
};
