/** What models of one figure share: the heat from an egg to the moth that comes of it. */
import type { TemperatureUnit } from '../../base/temperature.ts';
import type { PhenologyModel, Sourced, StageDuration } from '../types.ts';

interface Generation {
  readonly id: string;
  readonly insect: string;
  readonly name: PhenologyModel['name'];
  readonly lower: number;
  readonly upper: number | null;
  readonly unit: TemperatureUnit;
  /** Degree-days in that unit. */
  readonly eggToAdult: number;
}

interface StageLength extends Omit<Generation, 'eggToAdult' | 'upper'> {
  readonly stage: StageDuration['stage'];
  /** Degree-days in that unit. */
  readonly lasts: number;
}

/** How long one stage lasts above a threshold of its own. It is followed by no date: nobody sees a field's eggs laid. */
export const oneStage = (source: Sourced, { id, insect, name, lower, unit, stage, lasts }: StageLength): PhenologyModel => ({
  ...source,
  id,
  insect,
  name,
  heat: { method: 'single-sine', cutoff: 'none', lower, upper: null, unit },
  start: { kind: 'stage' },
  events: [],
  stages: [{ stage, lasts }],
  note: {
    en: 'Reared at steady temperatures, where every way of counting heat agrees; the sine curve is chosen here.',
    es: 'Criado a temperaturas constantes, donde toda forma de contar el calor coincide; la curva seno se eligió aquí.',
  },
});

/**
 * The moths of the next generation, at the earliest: eggs are taken to be laid on the day of the first catch. Such figures
 * come from rearing at steady temperatures, where every way of counting heat agrees.
 */
export const fromFirstCatch = (source: Sourced, generation: Generation): PhenologyModel => {
  const { id, insect, name, lower, upper, unit, eggToAdult } = generation;
  return {
    ...source,
    id,
    insect,
    name,
    heat: { method: 'single-sine', cutoff: upper === null ? 'none' : 'horizontal', lower, upper, unit },
    start: { kind: 'biofix' },
    events: [{ event: 'next-adults', generation: null, from: eggToAdult, to: null, approximate: true }],
    stages: [],
    note: {
      en: 'The figure is from egg to adult. Eggs are taken to be laid from the first catch on, so that the next moths are dated at the earliest; the sine curve is chosen here, the source reared at steady temperatures.',
      es: 'La cifra es de huevo a adulto. Se toma que la puesta empieza con la primera captura, así que las siguientes palomillas se fechan lo antes posible; la curva seno se eligió aquí, la fuente crió a temperaturas constantes.',
    },
  };
};
