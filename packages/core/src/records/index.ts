export * from './program.ts';
export * from './schema.ts';
