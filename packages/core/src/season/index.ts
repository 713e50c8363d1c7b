export * from './route.ts';
