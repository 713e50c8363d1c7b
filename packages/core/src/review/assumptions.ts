/** How much data a conclusion takes. Each figure is Duskwatch's own, chosen so that intervals keep their level. */
import { namedFigures } from '../catalogue/named-figures.ts';
import { OWN_FIGURE } from '../catalogue/sources/sources.ts';
import type { Assumption } from '../catalogue/types.ts';

const figures = {
  sharedBlocks: {
    value: 6,
    unit: {
      en: 'nights at one site with both traps and some catch',
      es: 'noches en un sitio con ambas trampas y alguna captura',
    },
    why: {
      en: 'Fewer shared nights do not show how much counts scatter from one night to the next.',
      es: 'Menos noches compartidas no muestran cuánto varían los conteos de una noche a otra.',
    },
    ...OWN_FIGURE,
  },
  mothsPerTreatment: {
    value: 10,
    unit: { en: 'moths in the shared nights', es: 'polillas en las noches compartidas' },
    why: {
      en: 'With fewer moths on one side the ratio has hardly a lower or upper limit.',
      es: 'Con menos polillas de un lado, la proporción apenas tiene límite inferior o superior.',
    },
    ...OWN_FIGURE,
  },
  trapLogSd: {
    value: 0.25,
    unit: {
      en: 'log scale, between two traps of one design at one site',
      es: 'escala logarítmica, entre dos trampas de un mismo diseño en un sitio',
    },
    why: {
      en: 'Post, setting and lure make one trap catch more than its twin, all season. Until several sites show by how much, about a quarter is taken.',
      es: 'El poste, la colocación y el cebo hacen que una trampa capture más que su gemela toda la temporada. Mientras varios sitios no muestren cuánto, se toma una cuarta parte.',
    },
    ...OWN_FIGURE,
  },
  sitesSeen: {
    value: 3,
    unit: { en: 'sites with both', es: 'sitios con ambas' },
    why: {
      en: 'Two sites show hardly anything of how sites differ.',
      es: 'Dos sitios apenas muestran cuánto difieren los sitios.',
    },
    ...OWN_FIGURE,
  },
  seasonsForTrend: {
    value: 4,
    unit: { en: 'seasons with both', es: 'temporadas con ambas' },
    why: {
      en: 'Through three points there is always a line, and hardly a sign of how far off it is.',
      es: 'Por tres puntos siempre pasa una recta, y apenas se ve cuánto se aparta.',
    },
    ...OWN_FIGURE,
  },
  usefulFactor: {
    value: 1.5,
    unit: {
      en: 'factor between a ratio and the ends of its interval',
      es: 'factor entre una proporción y los extremos de su intervalo',
    },
    why: {
      en: 'A ratio known less closely than this is of little use for adjusting a threshold.',
      es: 'Una proporción conocida con menos precisión sirve de poco para ajustar un umbral.',
    },
    ...OWN_FIGURE,
  },
  spareObservations: {
    value: 8,
    unit: { en: 'observations beyond the effects fitted', es: 'observaciones además de los efectos ajustados' },
    why: {
      en: 'With fewer to spare, scatter and effect are not told apart.',
      es: 'Con menos de sobra, no se distinguen la variación y el efecto.',
    },
    ...OWN_FIGURE,
  },
  samplePairs: {
    value: 20,
    unit: { en: 'samples with the catch before them known', es: 'muestras con captura anterior conocida' },
    why: {
      en: 'Fewer pairs of catch and sample fix neither a lag nor a threshold.',
      es: 'Menos pares de captura y muestra no fijan ni un desfase ni un umbral.',
    },
    ...OWN_FIGURE,
  },
  fieldsSampled: {
    value: 5,
    unit: { en: 'fields sampled', es: 'parcelas muestreadas' },
    why: {
      en: 'Samples of one field are alike: what a catch means elsewhere is learned from other fields, and fewer hardly show how they differ.',
      es: 'Las muestras de una parcela se parecen: lo que una captura significa en otro lugar se aprende de otras parcelas, y menos apenas muestran cuánto difieren.',
    },
    ...OWN_FIGURE,
  },
  samplesEachSide: {
    value: 4,
    unit: {
      en: 'samples below the rule, and as many at or above it',
      es: 'muestras por debajo de la regla, y otras tantas en ella o por encima',
    },
    why: {
      en: 'False alarms and misses are counted in these: with fewer, the rates say nothing.',
      es: 'En ellas se cuentan las falsas alarmas y las omisiones: con menos, las tasas no dicen nada.',
    },
    ...OWN_FIGURE,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type LessonAssumptionId = keyof typeof figures;

export const LESSON_ASSUMPTIONS = namedFigures(figures);
