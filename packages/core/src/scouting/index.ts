export * from './assumptions.ts';
export * from './distribution.ts';
export * from './exact.ts';
export * from './plan.ts';
export * from './plan-for.ts';
export * from './precision.ts';
export * from './presence.ts';
export * from './wald.ts';
