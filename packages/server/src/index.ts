export { dayInZone, readingDay } from './clock.ts';
export type { ProgramReader, ReadableStore } from './reader.ts';
export { isLoopback } from './security.ts';
export { buildServer, type ServerOptions } from './server.ts';
