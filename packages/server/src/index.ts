export { dayInZone, readingDay } from './clock.ts';
export { drivingTimesAddress } from './driving-times.ts';
export { mapOrigin } from './map-origins.ts';
export { type Accounts, type AccountsOptions, accountsOn } from './people/accounts.ts';
export { THIS_MACHINE } from './people/guard.ts';
export { newFirstPersonCode } from './people/tokens.ts';
export type { ProgramReader, ReadableStore } from './reader.ts';
export { isLoopback } from './security.ts';
export { buildServer, type ServerOptions } from './server.ts';
