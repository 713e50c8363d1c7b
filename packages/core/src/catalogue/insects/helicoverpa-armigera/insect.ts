import { COMMON_PRACTICE, FROM_MEMORY, published } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { fromFirstCatch, oneStage } from '../generation.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

const BARTEKOVA_2006 = published('Bartekova & Praslicka 2006, Plant Protect. Sci. 42:135–138', {
  author: 'Bartekova & Praslicka',
  year: 2006,
  title: null,
  where: 'Plant Protect. Sci. 42:135–138',
});
const ADLY_MIRONIDIS = published('Adly et al. (lettuce); Mironidis et al. 2010, Environ. Entomol. 39(4)', {
  author: 'Mironidis et al.',
  year: 2010,
  title: null,
  where: 'Environ. Entomol. 39(4)',
});

const models: readonly PhenologyModel[] = [
  fromFirstCatch(BARTEKOVA_2006, {
    id: 'helicoverpa-armigera-generation',
    insect: 'helicoverpa-armigera',
    name: { en: 'Old-world bollworm generation', es: 'Generación del gusano bellotero del Viejo Mundo' },
    lower: 11.5,
    upper: null,
    unit: 'C',
    eggToAdult: 625.0,
  }),
  fromFirstCatch(ADLY_MIRONIDIS, {
    id: 'helicoverpa-armigera-generation-second',
    insect: 'helicoverpa-armigera',
    name: {
      en: 'Old-world bollworm generation, second source',
      es: 'Generación del gusano bellotero del Viejo Mundo, segunda fuente',
    },
    lower: 10.92,
    upper: null,
    unit: 'C',
    eggToAdult: 589.6,
  }),
  oneStage(BARTEKOVA_2006, {
    id: 'helicoverpa-armigera-egg',
    insect: 'helicoverpa-armigera',
    name: { en: 'Old-world bollworm eggs', es: 'Huevos del gusano bellotero del Viejo Mundo' },
    lower: 14.83,
    unit: 'C',
    stage: 'egg',
    lasts: 64.1,
  }),
  oneStage(BARTEKOVA_2006, {
    id: 'helicoverpa-armigera-larva',
    insect: 'helicoverpa-armigera',
    name: { en: 'Old-world bollworm larvae', es: 'Larvas del gusano bellotero del Viejo Mundo' },
    lower: 11.34,
    unit: 'C',
    stage: 'larva',
    lasts: 344.8,
  }),
  oneStage(BARTEKOVA_2006, {
    id: 'helicoverpa-armigera-pupa',
    insect: 'helicoverpa-armigera',
    name: { en: 'Old-world bollworm pupae', es: 'Pupas del gusano bellotero del Viejo Mundo' },
    lower: 8.18,
    unit: 'C',
    stage: 'pupa',
    lasts: 222.2,
  }),
];

export const helicoverpaArmigera: InsectEntry = {
  insect: {
    id: 'helicoverpa-armigera',
    scientificName: 'Helicoverpa armigera',
    commonName: { en: 'old-world bollworm', es: 'gusano bellotero del Viejo Mundo' },
    hosts: ['tomato', 'pepper', 'sweet-corn', 'field-corn', 'beans'],
    feedsOn: ['peas', 'lettuce', 'eggplant', 'potato'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Stout yellowish to greenish brown moth, about 4 cm across; a dark kidney-shaped smudge on the forewing; hindwing pale with a broad dark edge that holds a paler patch.',
        es: 'Polilla robusta, café amarillenta a verdosa, de 4 cm de ala a ala; una mancha oscura en forma de riñón en el ala delantera; ala trasera pálida con un borde oscuro ancho que lleva una zona más clara.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'helicoverpa-zea',
        name: { en: 'corn earworm', es: 'gusano elotero' },
        note: {
          en: 'Cannot be told apart by eye: where both may fly, a laboratory looks at the moths.',
          es: 'No se distingue a simple vista: donde pueden volar las dos, un laboratorio revisa las palomillas.',
        },
      },
    ],
  },
  models,
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'helicoverpa-armigera',
      id: 'old-world-bollworm-larvae-in-fruit',
      crops: ['tomato', 'pepper'],
      stage: 'larva',
      unit: 'fruit',
      where: {
        en: 'in fruit behind a round hole, often near the stalk',
        es: 'en el fruto tras un agujero redondo, a menudo cerca del pedúnculo',
      },
    },
    {
      ...COMMON_PRACTICE,
      insect: 'helicoverpa-armigera',
      id: 'old-world-bollworm-larvae-in-ears',
      crops: ['sweet-corn', 'field-corn'],
      stage: 'larva',
      unit: 'ears',
      where: {
        en: 'at the tip under the husk, with droppings',
        es: 'en la punta bajo las hojas del elote, con excremento',
      },
    },
    {
      ...COMMON_PRACTICE,
      insect: 'helicoverpa-armigera',
      id: 'old-world-bollworm-larvae-on-beans',
      crops: ['beans'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'on flowers and in pods behind a round hole',
        es: 'en las flores y en las vainas tras un agujero redondo',
      },
    },
  ],
};
