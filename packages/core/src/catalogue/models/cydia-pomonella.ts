import { MSU_CODLING_MOTH } from '../sources.ts';
import type { PhenologyModel } from '../types.ts';

export const cydiaPomonellaModels: readonly PhenologyModel[] = [
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
