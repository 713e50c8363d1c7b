import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const trichoplusiaNi: InsectEntry = {
  insect: {
    id: 'trichoplusia-ni',
    scientificName: 'Trichoplusia ni',
    commonName: { en: 'cabbage looper', es: 'gusano falso medidor de la col' },
    hosts: ['brassicas', 'lettuce'],
    feedsOn: ['tomato', 'pepper', 'potato', 'beans', 'peas', 'beet'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Mottled grey-brown moth, about 3.5 cm across. In the middle of each forewing a silvery mark like a small u with a drop beside it; the two may touch.',
        es: 'Polilla gris café jaspeada, de 3.5 cm de ala a ala. En medio de cada ala delantera una marca plateada como una u pequeña con una gota al lado; pueden tocarse.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        name: { en: 'other looper moths', es: 'otras palomillas de gusanos medidores' },
        note: {
          en: 'The silvery mark is of another shape: one piece with a long tail, or a thin hook.',
          es: 'La marca plateada tiene otra forma: de una pieza con cola larga, o un gancho delgado.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'trichoplusia-ni',
      id: 'cabbage-looper-larvae-on-leaves',
      crops: ['brassicas', 'lettuce'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'on the undersides of leaves with ragged holes; green, walking with an arched back',
        es: 'en el envés de hojas con agujeros irregulares; verdes, caminan arqueando el lomo',
      },
    },
  ],
};
