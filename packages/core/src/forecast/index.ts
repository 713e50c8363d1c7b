export * from './event-forecast.ts';
export * from './expected-heat.ts';
export * from './hindcast.ts';
export * from './larvae.ts';
export * from './larvae-outlook.ts';
export * from './own-forecast.ts';
export * from './skill-tables.ts';
