import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const agrotisSegetum: InsectEntry = {
  insect: {
    id: 'agrotis-segetum',
    scientificName: 'Agrotis segetum',
    commonName: { en: 'turnip moth', es: 'gusano gris del nabo' },
    hosts: ['beet', 'lettuce', 'leek', 'potato'],
    feedsOn: ['brassicas', 'onion', 'garlic', 'sweet-corn', 'field-corn', 'tomato'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Greyish brown moth, about 4 cm across; on the forewing a ring, a kidney and a short club, each outlined dark; hindwings of the male white; his feelers feathered.',
        es: 'Polilla café grisácea, de 4 cm de ala a ala; en el ala delantera un anillo, un riñón y una maza corta, cada uno con orilla oscura; alas traseras del macho blancas; sus antenas, plumosas.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'agrotis-ipsilon',
        name: { en: 'black cutworm', es: 'gusano trozador negro' },
        note: {
          en: 'A small black dagger points outward from the kidney-shaped spot; feelers of the male feathered only at their base.',
          es: 'Una pequeña daga negra apunta hacia afuera desde la mancha en forma de riñón; antenas del macho plumosas solo en la base.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'agrotis-segetum',
      id: 'turnip-moth-larvae',
      crops: ['beet', 'lettuce', 'leek', 'potato'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'in the soil at the neck of the root or the tuber; young plants cut off at the ground',
        es: 'en el suelo junto al cuello de la raíz o al tubérculo; plantas jóvenes cortadas a ras del suelo',
      },
    },
  ],
};
