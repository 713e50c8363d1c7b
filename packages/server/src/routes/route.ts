import type { IncomingMessage, ServerResponse } from 'node:http';
import type { IsoDay, Shape } from '@duskwatch/core';
import type { FastifyBaseLogger, FastifyInstance, FastifyTypeProvider, RawServerDefault } from 'fastify';
import type { z } from 'zod';
import type { Accounts } from '../people/accounts.ts';
import type { ProgramReader } from '../reader.ts';
import type { Work } from '../work/run.ts';

/** What is asked is what its schema makes of it; what is answered is only read, so it may be the core's own values. */
export interface SchemaTypes extends FastifyTypeProvider {
  validator: this['schema'] extends z.ZodType ? z.output<this['schema']> : unknown;
  serializer: this['schema'] extends z.ZodType<Uint8Array>
    ? Uint8Array
    : this['schema'] extends z.ZodType
      ? Shape<this['schema']>
      : unknown;
}

export type App = FastifyInstance<RawServerDefault, IncomingMessage, ServerResponse, FastifyBaseLogger, SchemaTypes>;

export interface RouteContext {
  readonly reader: ProgramReader;
  /** Where long work is done. */
  readonly work: Work;
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
