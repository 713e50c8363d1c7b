import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const mythimnaUnipuncta: InsectEntry = {
  insect: {
    id: 'mythimna-unipuncta',
    scientificName: 'Mythimna unipuncta',
    commonName: { en: 'armyworm', es: 'gusano soldado verdadero' },
    hosts: ['sweet-corn', 'field-corn'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Sandy to reddish tan moth, about 4 cm across, with one small white dot in the middle of each forewing and a faint dark line to its tip.',
        es: 'Polilla color arena a café rojizo, de 4 cm de ala a ala, con un puntito blanco en medio de cada ala delantera y una línea oscura tenue hacia la punta.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'spodoptera-frugiperda',
        name: { en: 'fall armyworm', es: 'gusano cogollero' },
        note: {
          en: 'Mottled grey; the male has a white patch at the tip of the forewing, no dot in its middle.',
          es: 'Gris jaspeado; el macho tiene una mancha blanca en la punta del ala delantera y ningún punto en medio.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'mythimna-unipuncta',
      id: 'armyworm-larvae-on-corn',
      crops: ['sweet-corn', 'field-corn'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'on leaf edges at dusk and dawn, by day in the whorl or under litter; striped along the body',
        es: 'en el borde de las hojas al anochecer y al amanecer, de día en el cogollo o bajo el rastrojo; con rayas a lo largo',
      },
    },
  ],
};
