import { FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

export const spodopteraFrugiperda: InsectEntry = {
  insect: {
    id: 'spodoptera-frugiperda',
    scientificName: 'Spodoptera frugiperda',
    commonName: { en: 'fall armyworm', es: 'gusano cogollero' },
    hosts: ['sweet-corn', 'field-corn'],
    feedsOn: ['tomato', 'pepper', 'potato', 'squash', 'pumpkin', 'brassicas', 'beans'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Mottled grey-brown male, about 3.5 cm across, with a white patch at the tip of the forewing and a pale slanting mark in its middle. Hindwing shining white with a thin dark edge.',
        es: 'Macho jaspeado gris y café, de unos 3.5 cm de ala a ala, con una mancha blanca en la punta del ala delantera y una marca pálida oblicua en medio. Ala trasera blanca brillante con borde fino oscuro.',
      },
    },
    lookAlikes: [],
  },
  models: [],
  rules,
  recognition,
};
