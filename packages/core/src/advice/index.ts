export { adviseAll, adviseCell } from './advise.ts';
export * from './dispersion.ts';
export { checkDue, lureEnds, nextCheck } from './due.ts';
export { asOf, type Prepared, prepare, seasonStart, withChecks } from './prepare.ts';
export { type SeasonPoint, seasonPointSchema, seasonPoints } from './season-points.ts';
export * from './types.ts';
