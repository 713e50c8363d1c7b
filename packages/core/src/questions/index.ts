export * from './assumptions.ts';
export type { Entry } from './entries.ts';
export { questionInWords } from './in-words.ts';
export { expectedFrom, oddSide } from './next-count.ts';
export * from './questions.ts';
export * from './questions-view.ts';
export * from './types.ts';
