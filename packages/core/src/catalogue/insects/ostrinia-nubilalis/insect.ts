import { APPLE_UW, FROM_MEMORY, ILLINOIS_2007, noted } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { recognition, rules } from './rules.ts';

const models: readonly PhenologyModel[] = [
  {
    ...APPLE_UW,
    id: 'ostrinia-nubilalis-calendar',
    insect: 'ostrinia-nubilalis',
    name: { en: 'European corn borer from 1 January', es: 'Barrenador europeo del maíz desde el 1 de enero' },
    heat: { method: 'modified-average', cutoff: 'horizontal', lower: 50, upper: 86, unit: 'F' },
    start: { kind: 'calendar', month: 1, date: 1 },
    events: [
      { event: 'first-moth', generation: 1, from: 374, to: null },
      { event: 'first-eggs', generation: 1, from: 450, to: null },
      { event: 'peak-flight', generation: 1, from: 631, to: null },
      { event: 'treatment-period', generation: 1, from: 800, to: 1000 },
      { event: 'first-moth', generation: 2, from: 1400, to: null },
      { event: 'first-eggs', generation: 2, from: 1450, to: null },
      { event: 'egg-hatch', generation: 2, from: 1550, to: null },
      { event: 'treatment-period', generation: 2, from: 1550, to: 2100 },
      { event: 'peak-flight', generation: 2, from: 1733, to: null },
    ],
    stages: [],
    note: {
      en: 'A spring and a summer flight; a third, where there is one, is not dated.',
      es: 'Un vuelo de primavera y uno de verano; el tercero, donde lo hay, no se fecha.',
    },
  },
  {
    ...ILLINOIS_2007,
    id: 'ostrinia-nubilalis-first-capture',
    insect: 'ostrinia-nubilalis',
    name: { en: 'European corn borer from first capture', es: 'Barrenador europeo del maíz desde la primera captura' },
    heat: { method: 'simple-average', cutoff: 'none', lower: 50, upper: null, unit: 'F' },
    start: { kind: 'biofix' },
    events: [{ event: 'small-larvae', generation: 1, from: 212, to: null }],
    stages: [],
    note: {
      en: 'First instars. How the heat was counted is not stated beyond the base of 50 °F; the simple average is a choice (common practice, no source).',
      es: 'Primeros estadios. De cómo se contó el calor solo se indica la base de 50 °F; la media simple es una elección (práctica común, sin fuente).',
    },
  },
];

export const ostriniaNubilalis: InsectEntry = {
  insect: {
    id: 'ostrinia-nubilalis',
    scientificName: 'Ostrinia nubilalis',
    commonName: { en: 'European corn borer', es: 'barrenador europeo del maíz' },
    hosts: ['sweet-corn', 'field-corn', 'pepper', 'potato'],
    feedsOn: ['tomato', 'apple', 'beans', 'beet'],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: {
      rule: { kind: 'first-catch' },
      ...noted(ILLINOIS_2007, {
        en: 'Only the model that counts from the first capture needs it; the calendar model starts on 1 January.',
        es: 'Solo lo necesita el modelo que cuenta desde la primera captura; el modelo de calendario empieza el 1 de enero.',
      }),
    },
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Slender buff moth, about 2.5 cm across, a flat triangle at rest. Two wavy darker lines cross the forewings; males are darker, and their abdomen is longer than the wings.',
        es: 'Polilla esbelta, amarillenta, de unos 2.5 cm de ala a ala; en reposo, un triángulo plano. Dos líneas onduladas más oscuras cruzan las alas delanteras; el macho es más oscuro y su abdomen sobresale de las alas.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'diatraea-grandiosella',
        name: { en: 'southwestern corn borer', es: 'barrenador del maíz del suroeste' },
        note: {
          en: 'Whitish to straw-coloured without wavy lines; feelers before the mouth stand forward like a snout.',
          es: 'Blanquecina a pajiza, sin líneas onduladas; los palpos sobresalen como un hocico.',
        },
      },
    ],
  },
  models,
  rules,
  recognition,
};
