export * from './event-forecast.ts';
export * from './expected-heat.ts';
export * from './hindcast.ts';
export * from './larvae.ts';
export * from './larvae-outlook.ts';
export * from './own-forecast.ts';
export { FORECAST_SKILL, type SkillFigure } from './skill.ts';
export * from './skill-tables.ts';
