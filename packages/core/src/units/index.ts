export * from './day.ts';
export * from './problem.ts';
export * from './temperature.ts';
