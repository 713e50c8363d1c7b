import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const phthorimaeaOperculella: InsectEntry = {
  insect: {
    id: 'phthorimaea-operculella',
    scientificName: 'Phthorimaea operculella',
    commonName: { en: 'potato tuberworm', es: 'palomilla de la papa' },
    hosts: ['potato'],
    feedsOn: ['tomato', 'eggplant', 'pepper'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Narrow straw-coloured to grey-brown moth, about 1.3 cm across, with two or three dark dots on each forewing and fringed hindwings.',
        es: 'Polilla angosta, color paja a gris café, de 1.3 cm de ala a ala, con dos o tres puntos oscuros en cada ala delantera y alas traseras con flecos.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'tuta-absoluta',
        name: { en: 'tomato leafminer', es: 'palomilla minadora del tomate' },
        note: {
          en: 'Smaller and silvery grey.',
          es: 'Más pequeña y gris plateada.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'phthorimaea-operculella',
      id: 'potato-tuberworm-larvae',
      crops: ['potato'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'in blotch mines of leaves and stems; in tubers near the eyes, with dark droppings',
        es: 'en minas de hojas y tallos; en los tubérculos cerca de los ojos, con excremento oscuro',
      },
    },
  ],
};
