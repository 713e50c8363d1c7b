import type { IncomingMessage, ServerResponse } from 'node:http';
import type { IsoDay } from '@duskwatch/core';
import type { FastifyBaseLogger, FastifyInstance, RawServerDefault } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { Accounts } from '../people/accounts.ts';
import type { ProgramReader } from '../reader.ts';
import type { Sums } from '../sums/apart.ts';

export type App = FastifyInstance<RawServerDefault, IncomingMessage, ServerResponse, FastifyBaseLogger, ZodTypeProvider>;

export interface RouteContext {
  readonly reader: ProgramReader;
  /** Where sums over whole seasons are done. */
  readonly sums: Sums;
  /** Null: whoever reaches this server is its coordinator. */
  readonly accounts: Accounts | null;
  /** Where people reach the server, when that is not where it listens. */
  readonly publicOrigin: string | undefined;
  /** A service for driving times; left out: none is asked. */
  readonly drivingTimesAddress?: string | undefined;
  /** The day to read the program on: as asked for, else its own. */
  readonly dayFor: (asked: IsoDay | undefined) => Promise<IsoDay>;
}

export type Route = (app: App, context: RouteContext) => void;
