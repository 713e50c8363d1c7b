export * from './assumptions.ts';
export type { Entry } from './entries.ts';
export * from './questions.ts';
export { saidInEnglish } from './say.ts';
export * from './types.ts';
