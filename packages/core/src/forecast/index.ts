export * from './event-forecast.ts';
export * from './expected-heat.ts';
export * from './hindcast.ts';
export * from './own-forecast.ts';
