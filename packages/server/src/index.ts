export { drivingTimesAddress } from './driving-times.ts';
export { mapOrigin } from './map-origins.ts';
export { type AccountsOptions, accountsOn } from './people/accounts.ts';
export { THIS_MACHINE } from './people/guard.ts';
export { newFirstPersonCode } from './people/tokens.ts';
export type { OtherProgram } from './routes/other-program.ts';
export { isLoopback } from './security.ts';
export { buildServer } from './server.ts';
export { workHere, workInThreads } from './work/run.ts';
