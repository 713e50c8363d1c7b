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

const HOSTS = noted(FROM_MEMORY, {
  en: 'The crops of this catalogue on which it is commonly trapped and scouted for; not a list of every host.',
  es: 'Los cultivos de este catálogo en los que se suele trampear y muestrear; no es una lista de todos los hospederos.',
});

export const insects: readonly Insect[] = [
  {
    id: 'helicoverpa-zea',
    scientificName: 'Helicoverpa zea',
    commonName: { en: 'corn earworm / tomato fruitworm', es: 'gusano elotero / gusano del fruto del tomate' },
    hosts: ['sweet-corn', 'field-corn', 'tomato', 'pepper'],
    hostsSource: HOSTS,
    biofix: {
      rule: { kind: 'sustained-catch', followedBy: 1 },
      ...noted(COMMON_PRACTICE, {
        en: 'A lone moth may be a stray: the flight starts with the catch that the next visit confirms.',
        es: 'Una polilla sola puede ser casual: el vuelo empieza con la captura que la siguiente visita confirma.',
      }),
    },
    lookAlikes: [
      {
        ...CALIFORNIA_AGRICULTURE_1990,
        name: { en: 'false corn earworm', es: 'falso gusano elotero' },
        note: {
          en: 'Comes to traps meant for corn earworm, known from western valleys; count it apart.',
          es: 'Llega a trampas para el gusano elotero; se conoce en valles del oeste. Cuéntelo aparte.',
        },
      },
      {
        ...CALIFORNIA_AGRICULTURE_1990,
        name: { en: 'other owlet moths (Noctuidae)', es: 'otras polillas noctuidas (Noctuidae)' },
        note: {
          en: 'Several enter these traps; count them apart from the target.',
          es: 'Varias entran en estas trampas; cuéntelas aparte de la especie buscada.',
        },
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
      ...noted(ILLINOIS_2007, {
        en: 'Only the model that counts from the first capture needs it; the calendar model starts on 1 January.',
        es: 'Solo lo necesita el modelo que cuenta desde la primera captura; el modelo de calendario empieza el 1 de enero.',
      }),
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
      ...noted(MSU_CODLING_MOTH, {
        en: 'The first date with a catch that is followed by a catch on the next date too.',
        es: 'La primera fecha con captura a la que sigue otra captura en la fecha siguiente.',
      }),
    },
    lookAlikes: [],
  },
];
