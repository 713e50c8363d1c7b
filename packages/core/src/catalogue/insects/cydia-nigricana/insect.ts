import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const cydiaNigricana: InsectEntry = {
  insect: {
    id: 'cydia-nigricana',
    scientificName: 'Cydia nigricana',
    commonName: { en: 'pea moth', es: 'polilla del chícharo' },
    hosts: ['peas'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Small dull olive-brown moth, about 1.5 cm across, with a row of short slanting black and white dashes along the front edge of the forewing.',
        es: 'Polilla pequeña, café olivo opaca, de 1.5 cm de ala a ala, con una hilera de rayitas inclinadas negras y blancas en el borde delantero del ala.',
      },
    },
    lookAlikes: [],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'cydia-nigricana',
      id: 'pea-moth-larvae-in-pods',
      crops: ['peas'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'inside pods, between the peas, with droppings and webbing',
        es: 'dentro de las vainas, entre los chícharos, con excremento y seda',
      },
    },
  ],
};
