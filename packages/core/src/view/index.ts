export { fieldView } from './field.ts';
export { seasonPoints } from './season-line.ts';
export * from './types.ts';
export { weekView } from './week.ts';
