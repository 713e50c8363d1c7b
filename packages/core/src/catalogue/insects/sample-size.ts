import { ASSUMPTIONS } from '../assumptions.ts';
import { COMMON_PRACTICE } from '../sources/sources.ts';

/** For rules whose source gives a share and no sample size. */
export const FIVE_PLACES_OF_TWENTY = {
  examine: { places: 5, unitsPerPlace: 20, units: ASSUMPTIONS.sampleUnits.value },
  examineSource: COMMON_PRACTICE,
} as const;
