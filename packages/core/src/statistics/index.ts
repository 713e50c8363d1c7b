export * from './gamma-function.ts';
export * from './incomplete-beta.ts';
