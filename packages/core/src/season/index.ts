export { type Matrix, type PathOptions, pathCost, shortPath } from './path-search.ts';
export * from './route.ts';
export { lowerBound } from './route-bound.ts';
