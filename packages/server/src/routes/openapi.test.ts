import { validate } from '@hyperjump/json-schema/openapi-3-1';
import Ajv2020 from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { beforeAll, describe, expect, it } from 'vitest';
import { served } from '../people/served.testing.ts';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

/** With the dialect in which 3.1 writes schemas. */
const OPENAPI_3_1 = 'https://spec.openapis.org/oas/3.1/schema-base';

interface Parameter {
  readonly name: string;
  readonly in: string;
  readonly required?: boolean;
}

interface Operation {
  readonly operationId?: string;
  readonly summary?: string;
  readonly tags?: readonly string[];
  readonly security?: readonly Readonly<Record<string, readonly string[]>>[];
  readonly parameters?: readonly Parameter[];
  readonly responses: Readonly<
    Record<
      string,
      {
        readonly description: string;
        readonly content?: Readonly<Record<string, { readonly schema: { readonly $ref?: string } }>>;
      }
    >
  >;
}

describe('GET /api/openapi.json', () => {
  let document: {
    readonly openapi: string;
    readonly tags: readonly { readonly name: string }[];
    readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
    readonly components: {
      readonly schemas: Readonly<Record<string, { readonly properties?: object }>>;
      readonly securitySchemes: object;
    };
  };
  let operations: { readonly route: string; readonly method: string; readonly operation: Operation }[];
  let allowed: Awaited<ReturnType<typeof served>>['app']['allowed'];

  beforeAll(async () => {
    const server = await served(smallProgram());
    document = (await server.app.inject('/api/openapi.json')).json();
    allowed = server.app.allowed;
    operations = Object.entries(document.paths).flatMap(([route, methods]) =>
      Object.entries(methods).map(([method, operation]) => ({ route, method, operation })),
    );
    return server.stop;
  });

  it('describes every address there is, and no other', () => {
    const served = allowed
      .filter(({ route }) => !route.startsWith('HEAD ') && !route.endsWith('/api/openapi.json'))
      .map(({ route }) => route.replace(/:(\w+)/g, '{$1}'));
    expect(document.openapi).toBe('3.1.0');
    expect(operations.map(({ method, route }) => `${method.toUpperCase()} ${route}`).sort()).toEqual(served.sort());
  });

  it('also describes a server that only reads', async () => {
    const app = buildServer({ store: memoryStore(smallProgram()) });
    const read = (await app.inject('/api/openapi.json')).json();
    expect(Object.keys(read.paths)).toContain('/api/week');
    expect(Object.keys(read.paths)).not.toContain('/api/revisions');
  });

  it('names every operation once, and says what it belongs to, in words that are explained', () => {
    const ids = operations.map(({ operation }) => operation.operationId);
    expect(ids.every((id) => /^[a-z][A-Za-z]+$/.test(id ?? ''))).toBe(true);
    expect(new Set(ids).size).toBe(ids.length);
    const tags = new Set(document.tags.map(({ name }) => name));
    for (const { route, operation } of operations) {
      expect(operation.summary, route).toBeTruthy();
      expect(operation.tags, route).toHaveLength(1);
      expect(tags, route).toContain(operation.tags![0]);
    }
    expect(new Set(operations.flatMap(({ operation }) => operation.tags))).toEqual(tags);
  });

  it('says which need a session, just as the server asks for one', () => {
    expect(document.components.securitySchemes).toMatchObject({ session: { type: 'apiKey', in: 'cookie' } });
    const open = new Set(allowed.filter(({ allow }) => allow === 'anyone').map(({ route }) => route));
    for (const { route, method, operation } of operations) {
      const address = `${method.toUpperCase()} ${route.replace(/\{(\w+)\}/g, ':$1')}`;
      expect(operation.security, address).toEqual(open.has(address) ? [] : [{ session: [] }]);
    }
  });

  it('gives each refusal its status and the one body that all refusals have', () => {
    for (const { route, operation } of operations) {
      const refusals = Object.entries(operation.responses).filter(([status]) => Number(status) >= 400);
      const statuses = refusals.map(([status]) => status);
      expect(statuses, route).toEqual(expect.arrayContaining(['429', '500', '503']));
      if (operation.security!.length > 0) expect(statuses, route).toEqual(expect.arrayContaining(['401', '403']));
      if (operation.parameters?.some((parameter) => parameter.in === 'path')) expect(statuses, route).toContain('400');
      for (const [status, { content }] of refusals) {
        if (route === '/api/revisions' && status === '409') continue;
        expect(content?.['application/json']?.schema, `${route} ${status}`).toEqual({ $ref: '#/components/schemas/Problems' });
      }
    }
  });

  it('declares every part of an address as a parameter that must be given', () => {
    for (const { route, operation } of operations) {
      const inRoute = [...route.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      const declared = (operation.parameters ?? []).filter((parameter) => parameter.in === 'path');
      expect(declared.map(({ name }) => name).sort(), route).toEqual(inRoute.sort());
      expect(
        declared.every(({ required }) => required),
        route,
      ).toBe(true);
    }
  });

  it('describes each shape once, by a name, and refers to it', () => {
    const week = document.paths['/api/week']!.get!;
    expect(week.responses['200']!.content!['application/json']!.schema).toEqual({ $ref: '#/components/schemas/Week' });
    expect(document.components.schemas.Week!.properties).toHaveProperty('due');
    expect(JSON.stringify(document.components.schemas.Field)).toContain('#/components/schemas/FieldInsect');
    const named = JSON.stringify(document);
    for (const name of Object.keys(document.components.schemas)) expect(named, name).toContain(`"#/components/schemas/${name}"`);
  });

  it('is what the OpenAPI Initiative’s own schema of 3.1 takes, its schemas in the dialect of 3.1 included', async () => {
    const judged = (said: unknown) => validate(OPENAPI_3_1, said as Record<string, never>, 'BASIC');
    const found = await judged(document);
    expect(found).toEqual({ valid: true });
    const week = document.paths['/api/week']!;
    const wrong = (part: object) => judged({ ...document, ...part });
    expect((await wrong({ paths: { '/api/week': { ...week, get: { ...week.get, parameters: [{ name: 'on' }] } } } })).valid).toBe(
      false,
    );
    expect((await wrong({ components: { schemas: { Week: { type: 'objekt' } } } })).valid).toBe(false);
  });

  it('is made of schemas that JSON Schema 2020-12 accepts, with no reference that leads nowhere', () => {
    const ajv = new Ajv2020({
      strict: true,
      strictTypes: false,
      strictTuples: false,
      strictRequired: false,
      allowUnionTypes: true,
    });
    addFormats(ajv);
    ajv.addFormat('binary', true);
    for (const keyword of ['components', 'example']) ajv.addKeyword(keyword);
    ajv.addSchema({ $id: 'duskwatch.json', components: document.components }, undefined, undefined, false);
    for (const name of Object.keys(document.components.schemas))
      expect(() => ajv.compile({ $ref: `duskwatch.json#/components/schemas/${name}` }), name).not.toThrow();
  });
});
