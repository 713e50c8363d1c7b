export * from './biofix.ts';
export * from './peak.ts';
export * from './summary.ts';
export * from './trend.ts';
export * from './types.ts';
