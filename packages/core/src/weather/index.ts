export * from './filled.ts';
export * from './gaps.ts';
export { type MonthlyNormals, normalsFromRecords } from './normals.ts';
export * from './series.ts';
export * from './types.ts';
