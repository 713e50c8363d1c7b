import { NYSIPM_CATCHES, noted, PURDUE_HOTLINE, published, unnamed } from '../sources/sources.ts';
import type { Practice } from '../types.ts';
import { ANY, caution, practice } from './kinds.ts';

const IOWA_PEPPERS = published('Iowa State Univ., European corn borer in peppers', {
  author: 'Iowa State Univ. Extension',
  year: null,
  title: null,
  where: 'Iowa State Univ. Extension, peppers',
});
const UC_ANR_BRASSICAS = published('UC ANR, cole crops', {
  author: 'UC ANR',
  year: null,
  title: null,
  where: 'UC ANR Statewide IPM Program, cole crops',
});

export const decidingPractices: readonly Practice[] = [
  {
    ...practice,
    id: 'catch-tracks-infestation',
    act: 'reading-catch',
    insects: ['helicoverpa-zea'],
    text: {
      en: 'Catch of adult tomato fruitworms has followed the start of infestation in the crop.',
      es: 'La captura de adultos del gusano del tomate ha coincidido con el inicio de la infestación.',
    },
  },
  {
    ...PURDUE_HOTLINE,
    ...ANY,
    weight: 'fact',
    id: 'threshold-is-estimate',
    act: 'deciding',
    insects: ['helicoverpa-zea'],
    note: {
      en: 'Published case: nights of 9, 7, 5, 9, 6, 7 and 7 moths against a threshold of 10.',
      es: 'Caso publicado: noches de 9, 7, 5, 9, 6, 7 y 7 polillas frente a un umbral de 10.',
    },
    text: {
      en: 'A threshold is an estimate: a week of nights just below it can lay as many eggs as one above.',
      es: 'Un umbral es una estimación: una semana de noches apenas por debajo puede dejar tantos huevos como una por encima.',
    },
  },
  {
    ...NYSIPM_CATCHES,
    ...ANY,
    weight: 'fact',
    id: 'catch-and-plants',
    act: 'reading-catch',
    text: {
      en: 'In sweet corn only the catch of corn earworm decides by itself; other catches say when to look, and a high one with nothing found asks for a better look.',
      es: 'En maíz dulce solo la captura del gusano elotero decide por sí sola; otras dicen cuándo revisar, y una alta sin hallar nada pide revisar mejor.',
    },
  },
  {
    ...practice,
    ...unnamed({
      en: 'Read in an extension scouting guide whose author and year are not at hand.',
      es: 'Leído en una guía de muestreo de un servicio de extensión cuyo autor y año no están a mano.',
    }),
    id: 'flight-starts',
    act: 'reading-catch',
    text: {
      en: 'A few moths a night for two or three nights in a row make a significant flight.',
      es: 'Unas pocas polillas por noche durante dos o tres noches seguidas son un vuelo importante.',
    },
  },
  {
    ...noted(IOWA_PEPPERS, {
      en: 'A light trap, not a pheromone trap: held against no catch here. Fruit of 1.3 cm was not entered in greenhouse trials, fruit of 3.8 cm was.',
      es: 'Una trampa de luz, no de feromona: aquí no se compara con ninguna captura. En ensayos de invernadero no se dañó el fruto de 1.3 cm, sí el de 3.8 cm.',
    }),
    ...ANY,
    weight: 'fact',
    id: 'pepper-light-trap',
    act: 'deciding',
    insects: ['ostrinia-nubilalis'],
    text: {
      en: 'Peppers: 4 or more European corn borers a night in a light trap, three nights running while fruits form, begin a rhythm of 7–10 days.',
      es: 'Chile: 4 o más barrenadores europeos por noche en una trampa de luz, tres noches seguidas mientras se forman frutos, inician un ritmo de 7–10 días.',
    },
  },
  {
    ...UC_ANR_BRASSICAS,
    ...ANY,
    weight: 'fact',
    id: 'brassicas-tolerance',
    act: 'deciding',
    insects: ['plutella-xylostella', 'pieris-rapae'],
    text: {
      en: 'Brassicas bear much loss of leaf between thinning and heading, and little from heading on.',
      es: 'Las brásicas toleran mucha pérdida de hoja entre el aclareo y la formación de cabeza, y poca desde entonces.',
    },
  },
  {
    ...caution,
    id: 'label-is-law',
    act: 'treating',
    text: {
      en: 'The product label is the law. Re-entry and pre-harvest intervals are read from it by the person who treats.',
      es: 'La etiqueta del producto es la ley. Los intervalos de reingreso y de cosecha los lee en ella quien aplica.',
    },
  },
  {
    ...caution,
    id: 'restricted-use',
    act: 'treating',
    text: {
      en: 'Restricted-use products are for licensed applicators only.',
      es: 'Los productos de uso restringido son solo para aplicadores con licencia.',
    },
  },
  {
    ...caution,
    id: 'protect-bees',
    act: 'treating',
    text: {
      en: 'Bees: no treatment on bloom where the label forbids it.',
      es: 'Abejas: ninguna aplicación en flor donde la etiqueta lo prohíbe.',
    },
  },
  {
    ...caution,
    id: 'stay-off-treated-fields',
    act: 'walking-fields',
    text: {
      en: 'Keep off a treated field until its re-entry time has passed.',
      es: 'No entre en una parcela tratada hasta que pase su tiempo de reingreso.',
    },
  },
  {
    ...caution,
    id: 'heat-traffic-alone',
    act: 'walking-fields',
    text: {
      en: 'Mind heat and traffic, and tell somebody where you are.',
      es: 'Cuidado con el calor y el tráfico, y avise a alguien dónde está.',
    },
  },
];
