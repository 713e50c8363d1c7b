import type { FastifyInstance, FastifyRequest } from 'fastify';
import { refuse } from '../problems.ts';

const READS = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses writes that another web page makes a browser send. Every browser names the page's origin with a write
 * (Fetch standard, section 3.2); what names none is no browser, and then must not carry a browser's cookie.
 */
export function refuseForeignWrites(app: FastifyInstance, publicOrigin: string | undefined): void {
  app.addHook('onRequest', async (request, reply) => {
    if (READS.has(request.method)) return;
    const { origin, cookie } = request.headers;
    const isOwn =
      origin === undefined ? cookie === undefined && !isCrossSite(request) : origin === ownOrigin(request, publicOrigin);
    if (isOwn) return;
    return refuse(reply, 403, {
      where: {},
      got: `a write from ${origin ?? 'an unnamed page'}`,
      expected: ownOrigin(request, publicOrigin),
      fix: 'open Duskwatch at its own address and try again; behind a proxy, start it with --origin',
    });
  });
}

/** Where people reach the server: the address it was told of, or the one they came by. */
export const ownOrigin = ({ protocol, host }: FastifyRequest, publicOrigin: string | undefined): string =>
  publicOrigin ?? `${protocol}://${host}`;

const isCrossSite = ({ headers }: FastifyRequest) =>
  !['same-origin', 'none', undefined].includes(headers['sec-fetch-site'] as string);
