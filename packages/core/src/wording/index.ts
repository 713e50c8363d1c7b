export { english } from './en.ts';
export { spanish } from './es.ts';
export { exact, figure, fine, percent } from './figures.ts';
export * from './types.ts';
