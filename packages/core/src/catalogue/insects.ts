import {
  CALIFORNIA_AGRICULTURE_1990,
  COMMON_PRACTICE,
  CUTWORM_EXTENSION,
  FROM_MEMORY,
  ILLINOIS_2007,
  MSU_CODLING_MOTH,
  noted,
} from './sources.ts';
import type { Insect } from './types.ts';

const HOSTS = noted(
  FROM_MEMORY,
  'The crops of this catalogue on which it is commonly trapped and scouted for; not a list of every host.',
);

export const insects: readonly Insect[] = [
  {
    id: 'helicoverpa-zea',
    scientificName: 'Helicoverpa zea',
    commonName: { en: 'corn earworm / tomato fruitworm', es: 'gusano elotero / gusano del fruto del tomate' },
    hosts: ['sweet-corn', 'field-corn', 'tomato', 'pepper'],
    hostsSource: HOSTS,
    biofix: {
      rule: { kind: 'sustained-catch', followedBy: 1 },
      ...noted(COMMON_PRACTICE, 'A lone moth may be a stray: the flight starts with the catch that the next visit confirms.'),
    },
    lookAlikes: [
      {
        ...CALIFORNIA_AGRICULTURE_1990,
        name: 'false corn earworm',
        note: 'Comes to traps meant for corn earworm, known from western valleys; count it apart.',
      },
      {
        ...CALIFORNIA_AGRICULTURE_1990,
        name: 'other owlet moths (Noctuidae)',
        note: 'Several enter these traps; count them apart from the target.',
      },
    ],
  },
  {
    id: 'ostrinia-nubilalis',
    scientificName: 'Ostrinia nubilalis',
    commonName: { en: 'European corn borer', es: 'barrenador europeo del maíz' },
    hosts: ['sweet-corn', 'field-corn', 'pepper', 'potato'],
    hostsSource: HOSTS,
    biofix: {
      rule: { kind: 'first-catch' },
      ...noted(
        ILLINOIS_2007,
        'Only the model that counts from the first capture needs it; the calendar model starts on 1 January.',
      ),
    },
    lookAlikes: [],
  },
  {
    id: 'spodoptera-frugiperda',
    scientificName: 'Spodoptera frugiperda',
    commonName: { en: 'fall armyworm', es: 'gusano cogollero' },
    hosts: ['sweet-corn', 'field-corn'],
    hostsSource: HOSTS,
    biofix: null,
    lookAlikes: [],
  },
  {
    id: 'agrotis-ipsilon',
    scientificName: 'Agrotis ipsilon',
    commonName: { en: 'black cutworm', es: 'gusano trozador negro' },
    hosts: ['sweet-corn', 'field-corn'],
    hostsSource: HOSTS,
    biofix: { rule: { kind: 'intense-capture', moths: 9, nights: 2 }, ...CUTWORM_EXTENSION },
    lookAlikes: [],
  },
  {
    id: 'melittia-cucurbitae',
    scientificName: 'Melittia cucurbitae',
    commonName: { en: 'squash vine borer', es: 'barrenador de la guía de la calabaza' },
    hosts: ['squash', 'pumpkin'],
    hostsSource: HOSTS,
    biofix: { rule: { kind: 'first-catch' }, ...COMMON_PRACTICE },
    lookAlikes: [],
  },
  {
    id: 'cydia-pomonella',
    scientificName: 'Cydia pomonella',
    commonName: { en: 'codling moth', es: 'polilla de la manzana' },
    hosts: ['apple'],
    hostsSource: HOSTS,
    biofix: {
      rule: { kind: 'sustained-catch', followedBy: 1 },
      ...noted(MSU_CODLING_MOTH, 'The first date with a catch that is followed by a catch on the next date too.'),
    },
    lookAlikes: [],
  },
];
