import type { IsoDay } from '@duskwatch/core';
import swagger from '@fastify/swagger';
import fastify, { type FastifyInstance } from 'fastify';
import { jsonSchemaTransform, validatorCompiler, type ZodTypeProvider } from 'fastify-type-provider-zod';
import { readingDay } from './clock.ts';
import { guard, THIS_MACHINE } from './people/guard.ts';
import { notFound, onError } from './problems.ts';
import { programReader, type ReadableStore } from './reader.ts';
import { adviceRoute } from './routes/advice.ts';
import { fieldRoute } from './routes/fields.ts';
import { healthRoute } from './routes/health.ts';
import { openApiRoute } from './routes/openapi.ts';
import { programRoute } from './routes/program.ts';
import type { RouteContext } from './routes/route.ts';
import { weekRoute } from './routes/week.ts';
import { secure } from './security.ts';
import { serveWeb } from './web.ts';

export interface ServerOptions {
  readonly store: ReadableStore;
  /** Folder of the built app; without it only the API is served. */
  readonly webRoot?: string;
  /** Answer only requests that name this machine. Default true: there are no accounts. */
  readonly thisMachineOnly?: boolean;
  /** The day to read on when nobody names one. Default: the program's pinned day, else today where its fields are. */
  readonly today?: () => IsoDay;
  readonly log?: boolean;
}

/** The API over one store, and the app in front of it; not yet listening. */
export function buildServer({ store, webRoot, thisMachineOnly = true, today, log = false }: ServerOptions): FastifyInstance {
  const app = fastify({
    logger: log ? { level: 'warn' } : false,
    forceCloseConnections: 'idle',
    routerOptions: { maxParamLength: 200 },
  }).withTypeProvider<ZodTypeProvider>();

  app.setValidatorCompiler(validatorCompiler);
  // Answers are the core's own values; the schemas describe them and tests hold them to it.
  app.setSerializerCompiler(() => (value) => JSON.stringify(value));
  app.setErrorHandler(onError);
  secure(app, { thisMachineOnly });
  guard(app, async () => THIS_MACHINE);
  app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Duskwatch',
        version: '1',
        description: 'From moth counts and weather to what to do in which field by when. Days are ISO 8601; temperatures °C.',
      },
    },
    transform: jsonSchemaTransform,
  });

  const reader = programReader(store);
  const context: RouteContext = {
    reader,
    dayFor: async (asked) => asked ?? today?.() ?? readingDay(await reader.everything()),
  };
  app.register(async (scope) => {
    const api = scope.withTypeProvider<ZodTypeProvider>();
    for (const route of [healthRoute, programRoute, weekRoute, fieldRoute, adviceRoute, openApiRoute]) route(api, context);
  });
  if (webRoot !== undefined) serveWeb(app, webRoot);
  else app.setNotFoundHandler(notFound);
  return app;
}
