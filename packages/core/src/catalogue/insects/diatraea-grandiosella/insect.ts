import { COMMON_PRACTICE, FROM_MEMORY } from '../../sources/sources.ts';
import type { InsectEntry } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';

export const diatraeaGrandiosella: InsectEntry = {
  insect: {
    id: 'diatraea-grandiosella',
    scientificName: 'Diatraea grandiosella',
    commonName: { en: 'southwestern corn borer', es: 'barrenador del maíz del suroeste' },
    hosts: ['field-corn', 'sweet-corn'],
    feedsOn: [],
    hostsSource: HOSTS_FROM_MEMORY,
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Plain straw-coloured to dull white moth, about 3 cm across, with mouthparts that stand out before the head like a snout.',
        es: 'Polilla lisa, color paja a blanco opaco, de 3 cm de ala a ala, con partes bucales que sobresalen delante de la cabeza como un hocico.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        insect: 'ostrinia-nubilalis',
        name: { en: 'European corn borer', es: 'barrenador europeo del maíz' },
        note: {
          en: 'Crossed by wavy dark lines; no snout.',
          es: 'Cruzada por líneas oscuras onduladas; sin hocico.',
        },
      },
    ],
  },
  models: [],
  rules: [],
  recognition: [
    {
      ...COMMON_PRACTICE,
      insect: 'diatraea-grandiosella',
      id: 'southwestern-corn-borer-larvae',
      crops: ['field-corn', 'sweet-corn'],
      stage: 'larva',
      unit: 'plants',
      where: {
        en: 'in the whorl and leaf sheaths when small, later in the stalk; pale with dark dots',
        es: 'en el cogollo y las vainas de las hojas cuando son pequeñas, después en el tallo; pálidas con puntos oscuros',
      },
    },
  ],
};
