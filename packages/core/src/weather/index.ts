export * from './gaps.ts';
export * from './series.ts';
export * from './types.ts';
