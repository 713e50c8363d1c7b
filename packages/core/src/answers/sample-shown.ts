import type { SampleRecord } from '../records/schema.ts';
import type { SampleShown } from './schema.ts';

/** A sample as pages show it. */
export const sampleShown = ({ sampledOn, kind, unitsExamined, unitsInfested, totalCount }: SampleRecord): SampleShown => ({
  sampledOn,
  kind,
  examined: unitsExamined,
  infested: unitsInfested,
  total: totalCount,
});
