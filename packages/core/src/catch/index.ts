export * from './dispersion.ts';
export * from './intervals.ts';
export * from './pool.ts';
export * from './rate.ts';
export * from './sum.ts';
export * from './types.ts';
