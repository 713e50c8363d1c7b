export * from './intervals.ts';
export * from './pool.ts';
export * from './rate.ts';
export * from './sum.ts';
export * from './types.ts';
export * from './zero-catch.ts';
