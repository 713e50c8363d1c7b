/** How far a crop has come between planting and harvest, by heat. */
import type { HeatRule } from '../../heat/types.ts';
import type { Crop, Sourced } from '../types.ts';

/** When the stages of a crop begin, as shares of its heat from planting (of seed) to the first harvest. */
export interface CropHeat extends Sourced {
  readonly heat: HeatRule;
  /** Degree-days from planting to the first harvest: of an early variety and of a late one, in the unit of `heat`. */
  readonly sums: readonly [early: number, late: number];
  /** By stage, in the crop's order. */
  readonly begins: readonly number[];
}

/** The growing degree-day of corn: both extremes held within 50 and 86 °F before the mean is taken. */
const CORN_HEAT: HeatRule = { method: 'modified-average', cutoff: 'horizontal', lower: 50, upper: 86, unit: 'F' };

const NEILD_NEWMAN: Sourced = {
  source: 'Neild & Newman, Growing season characteristics and requirements in the Corn Belt, NCH-40',
  standing: 'memory',
  works: [
    {
      author: 'Neild & Newman',
      year: null,
      title: 'Growing season characteristics and requirements in the Corn Belt',
      where: 'National Corn Handbook NCH-40, Purdue Univ. Cooperative Extension',
    },
  ],
};

/**
 * Degree-days from planting at which a hybrid of 2700 °F·d comes to each stage, as recalled from that table: three leaves
 * (between two at 200 and four at 345), tip of the tassel out, silks out, kernels in blister, in dough, ripe. Milk, at which
 * sweet corn is picked, is taken half-way from blister to dough.
 */
const TABLE = { threeLeaves: 270, tassel: 1135, silk: 1400, blister: 1660, dough: 1925, ripe: 2700 };
const MILK = (TABLE.blister + TABLE.dough) / 2;

const cornUntil = (harvest: number): readonly number[] =>
  [0, TABLE.threeLeaves, TABLE.tassel, TABLE.silk, TABLE.blister, harvest].map((sum) => sum / harvest);

/** A crop that is not here has no sums that anybody could stand for: its stage is carried by the calendar. */
const HEATS: ReadonlyMap<Crop['id'], CropHeat> = new Map([
  [
    'sweet-corn',
    {
      ...NEILD_NEWMAN,
      heat: CORN_HEAT,
      sums: [1200, 1900],
      begins: cornUntil(MILK),
      note: {
        en: 'The stages lie along the heat as in that table for field corn, cut off at milk; the sum to the first picking differs by variety, and 1200 to 1900 °F·d is recalled of no one work.',
        es: 'Las etapas se reparten en el calor como en esa tabla de maíz de grano, cortada en el estado lechoso; la suma hasta el primer corte varía con la variedad, y de 1200 a 1900 °F·d no se recuerda de una obra en particular.',
      },
    },
  ],
  [
    'field-corn',
    {
      ...NEILD_NEWMAN,
      heat: CORN_HEAT,
      sums: [2000, 3000],
      begins: cornUntil(TABLE.ripe),
      note: {
        en: 'That table is for a hybrid of 2700 °F·d; hybrids from early to late are taken to need 2000 to 3000.',
        es: 'Esa tabla es de un híbrido de 2700 °F·d; se toma que los híbridos, de tempranos a tardíos, piden de 2000 a 3000.',
      },
    },
  ],
]);

export const cropHeat = (crop: string): CropHeat | null => HEATS.get(crop) ?? null;
