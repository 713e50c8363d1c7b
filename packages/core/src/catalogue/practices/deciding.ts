import { PURDUE_HOTLINE } from '../sources/sources.ts';
import type { Practice } from '../types.ts';
import { ANY, caution, practice } from './kinds.ts';

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
