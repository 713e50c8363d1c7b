export * from './assumptions.ts';
export type { Entry } from './entries.ts';
export * from './questions.ts';
export * from './questions-view.ts';
export { sayQuestion } from './say.ts';
export * from './types.ts';
