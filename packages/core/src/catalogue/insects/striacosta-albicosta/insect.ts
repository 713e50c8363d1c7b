import { FROM_MEMORY, noted } from '../../sources/sources.ts';
import type { InsectEntry, PhenologyModel } from '../../types.ts';
import { HOSTS_FROM_MEMORY } from '../hosts.ts';
import { HANSON_2015, recognition, rules } from './rules.ts';

const models: readonly PhenologyModel[] = [
  {
    ...HANSON_2015,
    id: 'striacosta-albicosta-flight',
    insect: 'striacosta-albicosta',
    name: {
      en: 'Western bean cutworm flight from 1 March',
      es: 'Vuelo del gusano cortador occidental del frijol desde el 1 de marzo',
    },
    heat: { method: 'simple-average', cutoff: 'horizontal', lower: 38, upper: 75, unit: 'F' },
    start: { kind: 'calendar', month: 3, date: 1 },
    events: [{ event: 'flight-25-percent', generation: 1, from: 2577, to: null }],
    stages: [],
    note: {
      en: 'The daily mean itself is held between 38 and 75 °F. Half of the flight at 2704 and three quarters at 2838 °F·d are recalled, and not dated here.',
      es: 'La media diaria misma se mantiene entre 38 y 75 °F. La mitad del vuelo a 2704 y tres cuartos a 2838 °F·d son de memoria, y aquí no se fechan.',
    },
  },
];

export const striacostaAlbicosta: InsectEntry = {
  insect: {
    id: 'striacosta-albicosta',
    scientificName: 'Striacosta albicosta',
    commonName: { en: 'western bean cutworm', es: 'gusano cortador occidental del frijol' },
    hosts: ['sweet-corn', 'field-corn'],
    feedsOn: ['beans'],
    hostsSource: noted(HOSTS_FROM_MEMORY, {
      en: 'Corn; dry beans too, for which no rule is known here.',
      es: 'Maíz; también el frijol seco, para el que aquí no se conoce regla.',
    }),
    biofix: null,
    marks: {
      ...FROM_MEMORY,
      note: {
        en: 'Stout brown moth, about 4 cm across. A cream band along the whole front edge of the forewing; behind it a pale round spot and a pale crescent.',
        es: 'Polilla robusta café, de unos 4 cm de ala a ala. Una banda crema a lo largo de todo el borde delantero del ala; detrás, una mancha redonda pálida y una media luna pálida.',
      },
    },
    lookAlikes: [
      {
        ...FROM_MEMORY,
        name: { en: 'other owlet moths (Noctuidae)', es: 'otras palomillas nocturnas (Noctuidae)' },
        note: {
          en: 'None has a cream band along the whole front edge of the forewing.',
          es: 'Ninguna tiene una banda crema a lo largo de todo el borde delantero del ala.',
        },
      },
    ],
  },
  models,
  rules,
  recognition,
};
