import { COMMON_PRACTICE, FROM_MEMORY, published } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { fromFirstCatch } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

const KRECHEMER_2015 = published('Krechemer & Foerster 2015, Eur. J. Entomol. 112', {
  author: 'Krechemer & Foerster',
  year: 2015,
  title: null,
  where: 'Eur. J. Entomol. 112',
});
const RESPONSE_2011 = published('National plant-health pest response sheet, 2011', {
  author: 'a national plant-health service',
  year: 2011,
  title: null,
  where: 'pest response sheet on Tuta absoluta',
});

const models: readonly PhenologyModel[] = [
  fromFirstCatch(KRECHEMER_2015, {
    id: 'tuta-absoluta-generation',
    insect: 'tuta-absoluta',
    name: { en: 'Tomato leafminer generation', es: 'Generación de la palomilla minadora del tomate' },
    lower: 8.0,
    upper: 37.3,
    unit: 'C',
    eggToAdult: 416.7,
  }),
  fromFirstCatch(RESPONSE_2011, {
    id: 'tuta-absoluta-generation-second',
    insect: 'tuta-absoluta',
    name: {
      en: 'Tomato leafminer generation, second source',
      es: 'Generación de la palomilla minadora del tomate, segunda fuente',
    },
    lower: 8.14,
    upper: null,
    unit: 'C',
    eggToAdult: 459.6,
  }),
];

export const tutaAbsoluta: InsectEntry = {
  insect: {
    id: 'tuta-absoluta',
    scientificName: 'Tuta absoluta',
    commonName: { en: 'tomato leafminer', es: 'palomilla minadora del tomate' },
    hosts: ['tomato'],
    feedsOn: ['potato', 'eggplant', 'pepper'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Tiny narrow moth, about 1 cm across, silvery grey with dark specks; feelers thread-like, banded light and dark.',
        es: 'Polilla diminuta y angosta, de 1 cm de ala a ala, gris plateada con puntos oscuros; antenas como hilos, con anillos claros y oscuros.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'keiferia-lycopersicella',
        name: { en: 'tomato pinworm', es: 'gusano alfiler del tomate' },
        note: {
          en: 'Ash-grey without silver; told apart with certainty only under a lens by a specialist.',
          es: 'Gris ceniza, sin plata; solo un especialista con lente la distingue con certeza.',
        },
      },
      {
        ...FROM_MEMORY,
        insect: 'phthorimaea-operculella',
        name: { en: 'potato tuberworm', es: 'palomilla de la papa' },
        note: {
          en: 'A little larger, straw-coloured, with two or three dark dots on the forewing.',
          es: 'Un poco más grande, color paja, con dos o tres puntos oscuros en el ala delantera.',
        },
      },
    ],
  },
  models,
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'tuta-absoluta',
      id: 'tomato-leafminer-larvae',
      crops: ['tomato'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'in wide see-through mines of the leaves, dark with droppings, in tips and under the calyx',
        es: 'en minas anchas y transparentes de las hojas, oscuras de excremento, en los brotes y bajo el cáliz',
      },
    },
  ],
};
