export { english } from './en.ts';
export { exact, figure, percent } from './figures.ts';
export * from './types.ts';
