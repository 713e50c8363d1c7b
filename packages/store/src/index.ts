export * from './accounts/types.ts';
export * from './calendars/types.ts';
export * from './error.ts';
export * from './open.ts';
export * from './types.ts';
export * from './uuid.ts';
