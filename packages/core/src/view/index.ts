export { fieldView } from './field.ts';
export { roundView } from './round.ts';
export { roundLater, roundLengthKm, roundOrder, type WrittenSince } from './round-later.ts';
export * from './round-types.ts';
export { seasonPoints } from './season-line.ts';
export { SAME_PLACE_M, stationsView, trapView } from './stations.ts';
export * from './stations-types.ts';
export * from './types.ts';
export { weekView } from './week.ts';
