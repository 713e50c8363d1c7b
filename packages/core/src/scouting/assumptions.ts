/** What a plan needs and a rule's source does not give. Each figure is shown with the plan that rests on it. */
import { namedFigures } from '../catalogue/named-figures.ts';
import { COMMON_PRACTICE, OWN_FIGURE } from '../catalogue/sources/sources.ts';
import type { Assumption } from '../catalogue/types.ts';

const figures = {
  belowShare: {
    value: 0.5,
    unit: { en: 'share of the rule', es: 'parte de la regla' },
    why: {
      en: 'At half the published figure a field should be called below it.',
      es: 'A la mitad de la cifra publicada, una parcela debe declararse por debajo.',
    },
    ...OWN_FIGURE,
  },
  aboveShare: {
    value: 1.5,
    unit: { en: 'share of the rule', es: 'parte de la regla' },
    why: {
      en: 'At one and a half times the published figure a field should be called above it.',
      es: 'A una vez y media la cifra publicada, una parcela debe declararse por encima.',
    },
    ...OWN_FIGURE,
  },
  riskAbove: {
    value: 0.1,
    unit: { en: 'probability', es: 'probabilidad' },
    why: {
      en: 'Accepted risk of calling a field above that is surely below.',
      es: 'Riesgo aceptado de declarar por encima una parcela que seguramente está por debajo.',
    },
    ...OWN_FIGURE,
  },
  riskBelow: {
    value: 0.1,
    unit: { en: 'probability', es: 'probabilidad' },
    why: {
      en: 'Accepted risk of calling a field below that is surely above.',
      es: 'Riesgo aceptado de declarar por debajo una parcela que seguramente está por encima.',
    },
    ...OWN_FIGURE,
  },
  clumpingK: {
    value: 1,
    unit: { en: 'dispersion k per unit', es: 'dispersión k por unidad' },
    why: {
      en: 'Insects and egg masses sit in clumps. Until counts from such fields give k, they are read as clearly clumped.',
      es: 'Los insectos y las masas de huevos están agrupados. Mientras los conteos de parcelas así no den k, se leen como claramente agrupados.',
    },
    ...OWN_FIGURE,
  },
  placesWalked: {
    value: 5,
    unit: { en: 'places in the field', es: 'sitios en la parcela' },
    why: {
      en: 'Where a rule names no places, units are taken in five, spread over the whole field.',
      es: 'Donde una regla no nombra sitios, se toman unidades en cinco, repartidos por toda la parcela.',
    },
    ...COMMON_PRACTICE,
  },
  unitsAtOnce: {
    value: 5,
    unit: { en: 'plants, ears or fruit at one place', es: 'plantas, mazorcas o frutos en un sitio' },
    why: {
      en: 'Neighbours are like one another: few are taken at a place before the walk goes on. No answer before every place was seen once, so that no corner decides for the field.',
      es: 'Las vecinas se parecen: se toman pocas en un sitio antes de seguir caminando. No hay respuesta antes de ver cada sitio una vez, para que ningún rincón decida por la parcela.',
    },
    ...OWN_FIGURE,
  },
  lapsAtMost: {
    value: 4,
    unit: { en: 'times past every place', es: 'vueltas por todos los sitios' },
    why: {
      en: 'Where the sample may grow large, more units are taken at each place rather than walking the field more often than this.',
      es: 'Donde la muestra puede crecer, se toman más unidades en cada sitio en vez de recorrer la parcela más veces que estas.',
    },
    ...OWN_FIGURE,
  },
  limitOverAverage: {
    value: 2,
    unit: { en: 'times the largest average sample', es: 'veces la mayor muestra media' },
    why: {
      en: 'A plan ends here undecided; it is reached seldom, and the field is then close to the rule. Never fewer than the rule itself examines, rounded up to whole laps, but no further than both answers agree with the share found.',
      es: 'Aquí un plan termina sin decidir; rara vez se llega, y entonces la parcela está cerca de la regla. Nunca menos de lo que examina la propia regla, redondeado a vueltas completas, pero solo hasta donde ambas respuestas concuerdan con la proporción hallada.',
    },
    ...OWN_FIGURE,
  },
  countedUnits: {
    value: 100,
    unit: { en: 'plants, ears or fruit', es: 'plantas, mazorcas o frutos' },
    why: {
      en: 'Five places of twenty are counted where no figure is published to judge a sample by.',
      es: 'Se cuentan cinco sitios de veinte donde no hay cifra publicada con que juzgar una muestra.',
    },
    ...COMMON_PRACTICE,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type PlanAssumptionId = keyof typeof figures;

export const PLAN_ASSUMPTIONS = namedFigures(figures);
