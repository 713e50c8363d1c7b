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
  placeCorrelation: {
    value: 0.15,
    unit: { en: 'correlation of two units at one place', es: 'correlación de dos unidades de un mismo sitio' },
    why: {
      en: 'Infested plants stand together. Until your own samples show how much, two at one place are taken to be this much alike: 0 would be chance alone, 1 all or none.',
      es: 'Las plantas infestadas están juntas. Mientras las muestras propias no muestren cuánto, dos de un mismo sitio se toman por así de parecidas: 0 sería puro azar, 1 todas o ninguna.',
    },
    ...OWN_FIGURE,
  },
  assumedPlaces: {
    value: 20,
    unit: { en: 'places', es: 'sitios' },
    why: {
      en: 'Beside your own samples, the assumed likeness of neighbours weighs as much as so many places of five.',
      es: 'Junto a las muestras propias, el parecido supuesto de las vecinas pesa como tantos sitios de cinco.',
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
      en: 'Neighbours are like one another: few are taken at a place before the walk goes on. No answer before a whole lap, so that no corner decides for the field.',
      es: 'Las vecinas se parecen: se toman pocas en un sitio antes de seguir caminando. No hay respuesta antes de una vuelta entera, para que ningún rincón decida por la parcela.',
    },
    ...OWN_FIGURE,
  },
  unitsAtMost: {
    value: 8,
    unit: { en: 'plants, ears or fruit at one place', es: 'plantas, mazorcas o frutos en un sitio' },
    why: {
      en: 'Where the sample may grow large, more are taken at each place, but no more than this: the next neighbour tells less than a new place.',
      es: 'Donde la muestra puede crecer, se toman más en cada sitio, pero no más que estas: la siguiente vecina dice menos que un sitio nuevo.',
    },
    ...OWN_FIGURE,
  },
  lapsAtMost: {
    value: 6,
    unit: { en: 'laps over the field', es: 'vueltas por la parcela' },
    why: {
      en: 'Nobody walks a field more often than this. The plan then ends, without an answer if need be.',
      es: 'Nadie recorre una parcela más veces que estas. El plan termina entonces, sin respuesta si hace falta.',
    },
    ...OWN_FIGURE,
  },
  limitOverAverage: {
    value: 2,
    unit: { en: 'times the largest average sample', es: 'veces la mayor muestra media' },
    why: {
      en: 'A plan ends here undecided; it is reached seldom, and the field is then close to the rule. Never fewer than the rule itself examines, rounded up to whole laps.',
      es: 'Aquí un plan termina sin decidir; rara vez se llega, y entonces la parcela está cerca de la regla. Nunca menos de lo que examina la propia regla, redondeado a vueltas completas.',
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
