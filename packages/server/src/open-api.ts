/** How the API describes itself: OpenAPI 3.1, read off the schemas that answers are typed by. */
import type { FastifyDynamicSwaggerOptions } from '@fastify/swagger';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import type { Allow } from './people/guard.ts';
import { SESSION_COOKIE } from './people/sessions.ts';
import { problems } from './schemas/common.ts';

type Document = NonNullable<FastifyDynamicSwaggerOptions['openapi']>;
type Transform = NonNullable<FastifyDynamicSwaggerOptions['transform']>;
type TransformObject = NonNullable<FastifyDynamicSwaggerOptions['transformObject']>;

const TAGS = {
  program: 'What the program is.',
  advice: 'The verb for each field and insect, its date and what it rests on.',
  flights: 'Flights of the insects, and the dates to come.',
  traps: 'Stations and traps.',
  rounds: 'Drives past the traps.',
  scouting: 'Samples: where, how many, when to stop.',
  season: 'A season ahead.',
  review: 'Seasons behind, and what they teach.',
  questions: 'Records that somebody should look at again.',
  records: 'What people wrote down: revisions, conflicts, photos.',
  documents: 'To print.',
  calendar: 'What is due, in a calendar of one’s own.',
  people: 'Who takes part, and who is signed in.',
  server: 'The server itself.',
} as const;

/** Answers of the server as a whole, which no route gives by itself. */
function commonRefusals(allow: Allow, writes: boolean): number[] {
  return [...(allow === 'anyone' ? [] : [401, 403]), ...(writes ? [403, 413] : []), 429, 500, 503];
}

const transform: Transform = (described) => {
  const { route, schema } = described;
  if (!schema || schema.hide) return jsonSchemaTransform(described);
  const allow = route.config?.allow ?? 'anyone';
  const methods = [route.method].flat();
  const own = (schema.response ?? {}) as Record<string, unknown>;
  const asked = schema.body ?? schema.querystring ?? schema.params;
  const common = [...(asked ? [400] : []), ...commonRefusals(allow, !methods.includes('GET'))];
  const response = { ...Object.fromEntries(common.map((status) => [status, problems])), ...own };
  return jsonSchemaTransform({
    ...described,
    schema: { ...schema, security: allow === 'anyone' ? [] : [{ session: [] }], response },
  });
};

/** Names what is described once, and leaves out what nothing refers to. */
const transformObject: TransformObject = (described) => {
  const document = jsonSchemaTransformObject(described) as Document;
  const all = document.components?.schemas ?? {};
  const used = new Set<string>();
  const follow = (part: unknown) => {
    for (const [, name] of JSON.stringify(part).matchAll(/"#\/components\/schemas\/([^"]+)"/g)) {
      if (used.has(name!)) continue;
      used.add(name!);
      follow(all[name!]);
    }
  };
  follow(document.paths ?? {});
  const schemas = Object.fromEntries(Object.entries(all).filter(([name]) => used.has(name)));
  return { ...document, components: { ...document.components, schemas } } as Document;
};

export const openApi: FastifyDynamicSwaggerOptions = {
  openapi: {
    openapi: '3.1.0',
    info: {
      title: 'Duskwatch',
      version: '1',
      description:
        'From moth counts and weather to what to do in which field by when. Days are ISO 8601; temperatures °C. Every answer that is no success has the body `Problems`.',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: '/' }],
    tags: Object.entries(TAGS).map(([name, description]) => ({ name, description })),
    components: {
      securitySchemes: {
        session: {
          type: 'apiKey',
          in: 'cookie',
          name: SESSION_COOKIE,
          description: 'Set by signing in. A server without accounts asks for none.',
        },
      },
    },
  },
  transform,
  transformObject,
};
