/** Holds every answer that a test gets to what the API says of itself. */
import Ajv2020, { type ValidateFunction } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import type { FastifyInstance } from 'fastify';

interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
}

interface Operation {
  readonly responses: Readonly<Record<string, { readonly content?: Readonly<Record<string, { readonly schema: object }>> }>>;
}

const DOCUMENT = 'duskwatch.json';
/** A part of the document by its path, as a JSON pointer writes it (RFC 6901, percent-encoded as in an address). */
const pointer = (...path: readonly string[]): string =>
  `${DOCUMENT}#/${path.map((part) => encodeURIComponent(part.replaceAll('~', '~0').replaceAll('/', '~1'))).join('/')}`;

/**
 * An answer with a status, a media type, a property or a value that the document does not know becomes an error, and
 * the test fails. Returns which operations gave an answer that succeeded.
 */
export function answersAreDescribed(app: FastifyInstance): ReadonlySet<string> {
  const succeeded = new Set<string>();
  let validators: { document: Described; compiled: (ref: string) => ValidateFunction } | null = null;

  function validatorsNow() {
    if (validators) return validators;
    const document = JSON.parse(JSON.stringify(app.swagger())) as Described;
    const ajv = new Ajv2020({ strict: false, allErrors: true });
    addFormats(ajv);
    ajv.addSchema({ ...document, $id: DOCUMENT });
    const known = new Map<string, ValidateFunction>();
    const compiled = (ref: string) => {
      const validate = known.get(ref) ?? ajv.compile({ $ref: ref });
      known.set(ref, validate);
      return validate;
    };
    validators = { document, compiled };
    return validators;
  }

  app.addHook('onSend', async (request, reply, payload) => {
    const url = request.routeOptions.url?.replace(/:(\w+)/g, '{$1}');
    const method = request.method.toLowerCase();
    if (url === undefined || request.is404 || method === 'head' || url === '/api/openapi.json') return payload;
    const { document, compiled } = validatorsNow();
    const status = String(reply.statusCode);
    const said = document.paths[url]?.[method]?.responses[status];
    const asked = `${request.method} ${request.url}: ${status}`;
    if (!said) throw new Error(`${asked} is not described`);
    if (reply.statusCode < 300) succeeded.add(`${request.method} ${request.routeOptions.url}`);
    const type = String(reply.getHeader('content-type') ?? '').split(';')[0]!;
    if (!said.content) {
      if (payload !== null && payload !== '' && ![204, 304].includes(reply.statusCode))
        throw new Error(`${asked} is said to be empty`);
      return payload;
    }
    if (!said.content[type]) throw new Error(`${asked} is ${type}, said to be ${Object.keys(said.content).join(', ')}`);
    if (type !== 'application/json') return payload;
    const validate = compiled(pointer('paths', url, method, 'responses', status, 'content', type, 'schema'));
    if (!validate(JSON.parse(payload as string))) throw new Error(`${asked}: ${JSON.stringify(validate.errors?.slice(0, 4))}`);
    return payload;
  });
  return succeeded;
}
