import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const heliothisVirescens: InsectEntry = {
  insect: {
    id: 'heliothis-virescens',
    scientificName: 'Heliothis virescens',
    commonName: { en: 'tobacco budworm', es: 'gusano tabacalero' },
    hosts: ['tomato', 'pepper'],
    feedsOn: ['beans', 'peas', 'eggplant', 'lettuce'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Pale greenish tan moth, about 3.5 cm across, with three slanting darker bands, each edged with cream, across the forewing.',
        es: 'Polilla café verdosa pálida, de 3.5 cm de ala a ala, con tres bandas inclinadas más oscuras, cada una con orilla crema, a través del ala delantera.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'helicoverpa-zea',
        name: { en: 'corn earworm', es: 'gusano elotero' },
        note: {
          en: 'Tan to olive without the three slanting bands.',
          es: 'Café claro a olivo, sin las tres bandas inclinadas.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'heliothis-virescens',
      id: 'tobacco-budworm-larvae-in-fruit',
      crops: ['tomato', 'pepper'],
      stage: 'larva',
      unit: 'fruit',
      where: {
        en: 'in buds and young fruit behind a round hole',
        es: 'en botones y frutos jóvenes tras un agujero redondo',
      },
    },
  ],
};
