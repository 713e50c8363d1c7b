export * from './accounts/types.ts';
export * from './calendars/types.ts';
export * from './error.ts';
export * from './fetches/types.ts';
export * from './open.ts';
export { restoreFile } from './sqlite-copy.ts';
export * from './types.ts';
export * from './uuid.ts';
