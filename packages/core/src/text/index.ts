export { english } from './en.ts';
export { spanish } from './es.ts';
export { exact, figure, fine, percent } from './figures.ts';
export { type ProblemInWords, problemInWords } from './problems.ts';
export { scoutingWording } from './scouting.ts';
export type { Sampled, ScoutingWording } from './scouting-types.ts';
export * from './types.ts';
export * from './unfit-reason.ts';
