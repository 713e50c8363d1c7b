import type { FastifyInstance } from 'fastify';
import { refuse } from './problems.ts';

const POLICY = "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'";
const HEADERS = {
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
} as const;

const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]']);

export const isLoopback = (host: string): boolean => LOOPBACK.has(host) || host === '::1';

/**
 * Headers for every answer; and, while there are no accounts, a server answers only
 * requests that name this machine, so that a web page elsewhere cannot reach it by a name that it points here.
 *
 * @param mapOrigins origins, as `mapOrigin` gives them, from which pages may fetch a base map; pages ask nobody else
 */
export function secure(
  app: FastifyInstance,
  { thisMachineOnly, mapOrigins }: { readonly thisMachineOnly: boolean; readonly mapOrigins: readonly string[] },
): void {
  const connections = mapOrigins.length === 0 ? '' : `; connect-src 'self' ${mapOrigins.join(' ')}`;
  const headers = { 'content-security-policy': POLICY + connections, ...HEADERS };
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(headers);
    if (thisMachineOnly && !isLoopback(request.hostname)) {
      return refuse(reply, 403, {
        where: {},
        got: `a request for ${request.hostname}`,
        expected: 'a request for localhost or 127.0.0.1',
        fix: 'open the address that Duskwatch printed when it started',
      });
    }
  });
}
