export * from './event-forecast.ts';
export * from './expected-heat.ts';
export * from './hindcast.ts';
export * from './larvae.ts';
export * from './larvae-outlook.ts';
export * from './own-forecast.ts';
export { FORECAST_SKILL } from './skill.ts';
export type { SkillFigure } from './skill-figure.ts';
export * from './skill-tables.ts';
