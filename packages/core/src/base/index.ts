export * from './day.ts';
export * from './distance.ts';
export * from './fault.ts';
export { foldText, matchOf, typedWords } from './find.ts';
export * from './length.ts';
export * from './problem.ts';
export * from './problem-schema.ts';
export * from './shape.ts';
export * from './temperature.ts';
