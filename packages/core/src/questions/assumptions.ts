/** Figures behind the questions about records. Each is Duskwatch's own. */
import { namedFigures } from '../catalogue/named-figures.ts';
import { OWN_FIGURE } from '../catalogue/sources/sources.ts';
import type { Assumption } from '../catalogue/types.ts';
import { NEXT_COUNT } from './next-count-figures.ts';

const figures = {
  falseAlarmsPerKind: {
    value: 0.015,
    unit: {
      en: 'probability that a season without faults brings one kind of question or more of it',
      es: 'probabilidad de que una temporada sin fallas traiga una clase de pregunta o más',
    },
    why: {
      en: 'With the six kinds that this holds for, nine sound seasons of ten are asked nothing. Asked in vain too often, people stop answering.',
      es: 'Con las seis clases para las que vale, a nueve de cada diez temporadas sanas no se les pregunta nada. Si se pregunta en vano demasiado a menudo, la gente deja de responder.',
    },
    ...OWN_FIGURE,
  },
  swapOverstates: {
    value: 1.35,
    unit: {
      en: 'times that the ln of the odds of an exchange overstates it',
      es: 'veces que el ln de la ventaja de un intercambio la exagera',
    },
    why: {
      en: 'Measured on invented sound seasons with designs, fading lures and places that drift: docs/rate-skill.md.',
      es: 'Medido en temporadas sanas inventadas con diseños, atrayentes que se agotan y lugares que cambian: docs/rate-skill.md.',
    },
    ...OWN_FIGURE,
  },
  swapsInVain: {
    value: 0.1,
    unit: {
      en: 'probability that a sound season brings a question about exchanged traps',
      es: 'probabilidad de que una temporada sana traiga una pregunta sobre trampas intercambiadas',
    },
    why: {
      en: 'Measured on the hardest of the same seasons: many traps of one farm, hardly any scatter between visits. Nothing rarer is promised.',
      es: 'Medido en las más difíciles de esas temporadas: muchas trampas de una finca y poca variación entre visitas. No se promete nada más raro.',
    },
    ...OWN_FIGURE,
  },
  flightDrift: {
    value: 4,
    unit: {
      en: 'shape of a gamma distribution of what a trap catches against its visits just before and after',
      es: 'forma de una distribución gamma de lo que captura una trampa frente a sus visitas de justo antes y después',
    },
    why: {
      en: 'Flights rise and fall: with this shape one visit of ten catches less than 0.4 of what its neighbours in time suggest.',
      es: 'Los vuelos suben y bajan: con esta forma, una visita de cada diez captura menos de 0.4 de lo que sugieren sus vecinas en el tiempo.',
    },
    ...OWN_FIGURE,
  },
  nextCountDrift: {
    value: NEXT_COUNT.drift,
    unit: {
      en: 'shape of a gamma distribution of what a trap catches against its visits just before',
      es: 'forma de una distribución gamma de lo que captura una trampa frente a sus visitas de justo antes',
    },
    why: {
      en: 'A phone without signal knows the last two counts of a trap and nothing of the other traps’ night: flights rise by more than what is known from both sides.',
      es: 'Un teléfono sin señal conoce los dos últimos conteos de una trampa y nada de la noche de las otras: los vuelos suben más de lo que se sabe por ambos lados.',
    },
    ...OWN_FIGURE,
  },
  nextCountScatter: {
    value: NEXT_COUNT.scatter,
    unit: {
      en: 'scatter k of one visit about what it should have found',
      es: 'dispersión k de una visita respecto de lo que debía hallar',
    },
    why: {
      en: 'The usual scatter between visits of one trap, for a phone that cannot measure the program’s own.',
      es: 'La variación usual entre visitas de una trampa, para un teléfono que no puede medir la del programa.',
    },
    ...OWN_FIGURE,
  },
  nextCountNotYet: {
    value: NEXT_COUNT.notYet,
    unit: { en: 'moths added to those of the last two visits', es: 'polillas añadidas a las de las dos últimas visitas' },
    why: {
      en: 'Before anything was caught a flight may begin with the next night, and its first moths are no question.',
      es: 'Antes de capturar nada, un vuelo puede empezar la noche siguiente, y sus primeras polillas no son motivo de pregunta.',
    },
    ...OWN_FIGURE,
  },
  askAtTrap: {
    value: NEXT_COUNT.askBelow,
    unit: {
      en: 'probability of a count as high, below which it is asked about at the trap',
      es: 'probabilidad de un conteo tan alto por debajo de la cual se pregunta ante la trampa',
    },
    why: {
      en: 'In sound invented seasons one visit of 130 to 630 is asked about, and of counts from 10 with a nought too many two of three. Asked more often it would be tapped away unread.',
      es: 'En temporadas inventadas sin fallas se pregunta por una visita de cada 130 a 630, y por dos de cada tres conteos desde 10 con un cero de más. Si se preguntara más, se tocaría sin leer.',
    },
    ...OWN_FIGURE,
  },
  roundedFrom: {
    value: 8,
    unit: { en: 'moths in a count', es: 'polillas en un conteo' },
    why: {
      en: 'From here on the numbers fall into fives about 10, 15, 20 …, so that one of five honest counts is such a number.',
      es: 'Desde aquí los números caen en grupos de cinco alrededor de 10, 15, 20…, de modo que uno de cada cinco conteos honestos es un número así.',
    },
    ...OWN_FIGURE,
  },
  bulkMinutes: {
    value: 2,
    unit: { en: 'minutes from the first entry to the last', es: 'minutos desde la primera anotación hasta la última' },
    why: {
      en: 'Checks of several days that come in so closely were written from paper or memory.',
      es: 'Las revisiones de varios días que llegan tan juntas se anotaron desde un papel o de memoria.',
    },
    ...OWN_FIGURE,
  },
  bulkDays: {
    value: 3,
    unit: { en: 'days on which the checks are said to have been made', es: 'días en que se dice que se hicieron las revisiones' },
    why: {
      en: 'Two rounds entered at one sitting are common; more are worth a question.',
      es: 'Anotar dos rondas de una vez es común; más merecen una pregunta.',
    },
    ...OWN_FIGURE,
  },
  askAgainDays: {
    value: 7,
    unit: {
      en: 'days after which a question put off is asked again',
      es: 'días después de los cuales se repite una pregunta aplazada',
    },
    why: {
      en: 'By then the trap has usually been visited once more.',
      es: 'Para entonces suele haberse visitado la trampa una vez más.',
    },
    ...OWN_FIGURE,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type QualityAssumptionId = keyof typeof figures;

export const QUALITY_ASSUMPTIONS = namedFigures(figures);
