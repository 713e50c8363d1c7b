/** From how far letters can be read. */
import type { Sourced } from '../catalogue/types.ts';

const MM_PER_INCH = 25.4;
const M_PER_FOOT = 0.3048;

/** Metres per millimetre of letter height: 30 feet for every inch. */
export const LEGIBILITY: Sourced & { readonly metresPerMm: number } = {
  metresPerMm: (30 * M_PER_FOOT) / MM_PER_INCH,
  source: 'US Manual on Uniform Traffic Control Devices 2009, section 2A.13: 30 feet per inch of letter height',
  standing: 'memory',
  note: {
    en: 'Made for road signs seen by day with clear sight. Poor light, a dirty window or a moving seat take away from it.',
    es: 'Hecho para señales de tránsito vistas de día y sin obstáculos. La poca luz, un vidrio sucio o un asiento en movimiento le restan.',
  },
};

/** Metres from which capital letters of a height in millimetres can be read. */
export const legibleFromM = (letterHeightMm: number): number => letterHeightMm * LEGIBILITY.metresPerMm;
