import type { IsoDay } from '@duskwatch/core';
import cookie from '@fastify/cookie';
import swagger from '@fastify/swagger';
import fastify, { type FastifyInstance } from 'fastify';
import { validatorCompiler } from 'fastify-type-provider-zod';
import { readingDay } from './clock.ts';
import { compressAnswers } from './compress.ts';
import { openApi } from './open-api.ts';
import { type AccountsOptions, accountsOn } from './people/accounts.ts';
import { guard, THIS_MACHINE } from './people/guard.ts';
import { limitRates } from './people/limits.ts';
import { refuseForeignWrites } from './people/origin.ts';
import { notFound, onError } from './problems.ts';
import { programReader, type ReadableStore } from './reader.ts';
import { type RecordsOptions, recordsContext } from './records/context.ts';
import { adviceRoute } from './routes/advice.ts';
import { bulletinRoute } from './routes/bulletin.ts';
import { checklistsRoute } from './routes/checklists.ts';
import { fieldRoute } from './routes/fields.ts';
import { flightsRoute } from './routes/flights.ts';
import { healthRoute } from './routes/health.ts';
import { invitationsRoute } from './routes/invitations.ts';
import { labelsRoute } from './routes/labels.ts';
import { openApiRoute } from './routes/openapi.ts';
import { type OtherProgram, otherProgramRoutes } from './routes/other-program.ts';
import { ownFieldsRoute } from './routes/own-fields.ts';
import { passKeysRoute } from './routes/pass-keys.ts';
import { peopleRoute } from './routes/people.ts';
import { programRoute } from './routes/program.ts';
import { reviewRoute } from './routes/review.ts';
import { roundRoute } from './routes/round.ts';
import { roundsRoute } from './routes/rounds.ts';
import type { RouteContext, SchemaTypes } from './routes/route.ts';
import { scoutingRoute } from './routes/scouting.ts';
import { searchRoute } from './routes/search.ts';
import { seasonRoute } from './routes/season.ts';
import { sessionRoute } from './routes/session.ts';
import { trapsRoute } from './routes/traps.ts';
import { weatherSourcesRoute } from './routes/weather-sources.ts';
import { weekRoute } from './routes/week.ts';
import { recordsRoutes } from './routes/writes.ts';
import { secure } from './security.ts';
import { keepFetching } from './weather/keep-fetching.ts';
import { serveWeb } from './web.ts';
import { type Work, workHere } from './work/run.ts';

export interface ServerOptions {
  readonly store: ReadableStore;
  /** Folder of the built app; without it only the API is served. */
  readonly webRoot?: string;
  /** People sign in. Without it everybody is the coordinator, and only requests that name this machine are answered. */
  readonly accounts?: AccountsOptions;
  /** People write, and keep photos. Without it the program is only read. */
  readonly records?: RecordsOptions;
  /** Origins from which the map may fetch a base map, as `mapOrigin` gives them. Default: none. */
  readonly mapOrigins?: readonly string[];
  /** Address of a routing service (OSRM’s HTTP API) that may be asked for driving times. Default: none. */
  readonly drivingTimes?: string | undefined;
  /** The other program that whoever sits at this machine may go over to. Default: none. */
  readonly other?: OtherProgram | undefined;
  /** The day to read on when nobody names one. Default: the program's pinned day, else today where its fields are. */
  readonly today?: () => IsoDay;
  /** Where long work is done. Default: in this thread. */
  readonly work?: Work;
  readonly log?: boolean;
}

/** The API over one store, and the app in front of it; not yet listening. */
export function buildServer({
  store,
  webRoot,
  accounts: accountsOptions,
  records,
  mapOrigins = [],
  drivingTimes,
  other,
  today,
  work = workHere,
  log = false,
}: ServerOptions): FastifyInstance {
  const app = fastify({
    logger: log ? { level: 'warn' } : false,
    // Whom a request came from is believed of a proxy on this machine, and only where one is said to stand.
    trustProxy: accountsOptions?.publicOrigin === undefined ? false : 'loopback',
    forceCloseConnections: 'idle',
    routerOptions: { maxParamLength: 200 },
  }).withTypeProvider<SchemaTypes>();

  app.setValidatorCompiler(validatorCompiler);
  // Answers are the core's own values; the schemas describe them and tests hold them to it.
  app.setSerializerCompiler(() => (value) => JSON.stringify(value));
  app.setErrorHandler(onError);
  const accounts = accountsOptions ? accountsOn(accountsOptions) : null;
  secure(app, { thisMachineOnly: accounts === null, mapOrigins });
  refuseForeignWrites(app, accountsOptions?.publicOrigin);
  guard(app, (request) => (accounts ? accounts.sessions.person(request) : Promise.resolve(THIS_MACHINE)));
  compressAnswers(app);
  app.register(cookie);
  if (accounts) limitRates(app);
  app.register(swagger, openApi);

  app.addHook('onClose', () => work.close());
  const reader = programReader(store);
  const context: RouteContext = {
    reader,
    work,
    accounts,
    publicOrigin: accountsOptions?.publicOrigin,
    drivingTimesAddress: drivingTimes,
    dayFor: async (asked) => asked ?? today?.() ?? readingDay(await reader.everything()),
  };
  app.register(async (scope) => {
    const api = scope.withTypeProvider<SchemaTypes>();
    for (const route of [
      healthRoute,
      otherProgramRoutes(other ?? null),
      programRoute,
      weekRoute,
      bulletinRoute,
      ownFieldsRoute,
      fieldRoute,
      flightsRoute,
      adviceRoute,
      roundRoute,
      scoutingRoute,
      roundsRoute,
      trapsRoute,
      searchRoute,
      weatherSourcesRoute,
      seasonRoute,
      labelsRoute,
      checklistsRoute,
      reviewRoute,
      sessionRoute,
      passKeysRoute,
      invitationsRoute,
      peopleRoute,
      openApiRoute,
    ])
      route(api, context);
    if (records) {
      const writing = recordsContext(context, records);
      for (const route of recordsRoutes) route(api, writing);
      if (records.fetchEveryMs !== undefined) keepFetching(api, writing.fetcher, records.fetchEveryMs);
    }
  });
  if (webRoot !== undefined) serveWeb(app, webRoot);
  else app.setNotFoundHandler(notFound);
  return app;
}
