export { ASSUMPTIONS, type AssumptionId } from './assumptions.ts';
export { catalogue } from './catalogue.ts';
export { canonicalCrop } from './crop-words.ts';
export { describeSources, type SourceKind, type SourceLine } from './describe-sources.ts';
export { catalogueWords } from './known-words.ts';
export * from './look-up.ts';
export { lookFor } from './looks.ts';
export { canonicalStage, stageOrder } from './stages.ts';
export * from './types.ts';
