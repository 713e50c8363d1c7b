import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const peridromaSaucia: InsectEntry = {
  insect: {
    id: 'peridroma-saucia',
    scientificName: 'Peridroma saucia',
    commonName: { en: 'variegated cutworm', es: 'gusano trozador variegado' },
    hosts: ['tomato', 'potato'],
    feedsOn: ['pepper', 'beans', 'peas', 'beet', 'lettuce', 'brassicas', 'onion', 'sweet-corn', 'field-corn', 'eggplant'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Stout moth, about 4.5 cm across, forewings mottled from grey to reddish brown, darker along the front edge; hindwings pearly and nearly clear, with dark veins.',
        es: 'Polilla robusta, de 4.5 cm de ala a ala, alas delanteras jaspeadas de gris a café rojizo, más oscuras en el borde delantero; alas traseras nacaradas, casi transparentes, con venas oscuras.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'agrotis-ipsilon',
        name: { en: 'black cutworm', es: 'gusano trozador negro' },
        note: {
          en: 'A small black dagger points outward from the kidney-shaped spot.',
          es: 'Una pequeña daga negra apunta hacia afuera desde la mancha en forma de riñón.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'peridroma-saucia',
      id: 'variegated-cutworm-larvae',
      crops: ['tomato', 'potato'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'by day in litter or soil at the foot of the plant, by night on leaves and fruit; a pale yellow dot on each of several segments of the back',
        es: 'de día en el rastrojo o el suelo al pie de la planta, de noche en hojas y frutos; un punto amarillo pálido en varios segmentos del lomo',
      },
    },
  ],
};
