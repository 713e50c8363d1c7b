import { FROM_MEMORY, MSU_CODLING_MOTH, noted } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

const models: readonly PhenologyModel[] = [
  {
    ...MSU_CODLING_MOTH,
    id: 'cydia-pomonella-from-biofix',
    insect: 'cydia-pomonella',
    name: { en: 'Codling moth from biofix', es: 'Polilla de la manzana desde el biofix' },
    heat: { method: 'single-sine', cutoff: 'horizontal', lower: 50, upper: 88, unit: 'F' },
    start: { kind: 'biofix' },
    events: [
      { event: 'egg-hatch', generation: 1, from: 250, to: null },
      { event: 'hatch-20-percent', generation: 1, from: 350, to: null },
      { event: 'peak-egg-laying', generation: 1, from: 550, to: null },
      { event: 'adult-emergence', generation: 2, from: 1060, to: null },
      { event: 'egg-hatch', generation: 2, from: 1250, to: null },
      { event: 'peak-flight', generation: 2, from: 1600, to: null },
      { event: 'peak-egg-laying', generation: 2, from: 1700, to: null },
    ],
    stages: [],
    note: {
      en: 'The table states a base of 50 °F; its sine form has an upper threshold of 88 °F. The horizontal cutoff is from memory.',
      es: 'La tabla indica una base de 50 °F; su forma senoidal tiene un umbral superior de 88 °F. El corte horizontal es de memoria.',
    },
  },
];

export const cydiaPomonella: InsectEntry = {
  insect: {
    id: 'cydia-pomonella',
    scientificName: 'Cydia pomonella',
    commonName: { en: 'codling moth', es: 'polilla de la manzana' },
    hosts: ['apple'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: {
      rule: { kind: 'sustained-catch', followedBy: 1 },
      ...noted(MSU_CODLING_MOTH, {
        en: 'The first date with a catch that is followed by a catch on the next date too.',
        es: 'La primera fecha con captura a la que sigue otra captura en la fecha siguiente.',
      }),
    },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Small grey moth, under 2 cm across, finely banded. A coppery brown patch with shining lines at the tip of each forewing.',
        es: 'Polilla gris pequeña, de menos de 2 cm de ala a ala, con bandas finas. Una mancha café cobriza con líneas brillantes en la punta de cada ala delantera.',
      },
    },
    lookAlikes: [],
  },
  models,
  rules,
  recognition,
};
