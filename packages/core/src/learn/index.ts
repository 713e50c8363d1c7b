export * from './assumptions.ts';
export * from './catch-to-infestation.ts';
export * from './infestation-fit.ts';
export * from './learned.ts';
export * from './lure-decay.ts';
export * from './side-by-side.ts';
