export { adviseAll, adviseCell } from './advise.ts';
export * from './dispersion.ts';
export { checkDue, lureEnds, nextCheck } from './due.ts';
export { asOf, growingYearStart, type Prepared, prepare, withChecks } from './prepare.ts';
export { type RatePoint, ratePointSchema, ratePoints } from './rate-points.ts';
export { choosingRule, type Rivals, rivalsFor } from './rival-rules.ts';
export { ownRule } from './rules.ts';
export * from './types.ts';
