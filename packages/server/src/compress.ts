import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { FastifyInstance } from 'fastify';

const compressed = promisify(gzip);

/** Bytes; shorter answers fit into a packet or two as they are. */
const WORTHWHILE = 2_000;
/** Of 1 to 9: most of the gain for little of the time. */
const LEVEL = 5;

/** Compresses what the API answers, for whoever takes it: a week of 500 fields on a phone with one bar. */
export function compressAnswers(app: FastifyInstance): void {
  app.addHook('onSend', async (request, reply, payload) => {
    if (typeof payload !== 'string' || payload.length < WORTHWHILE || reply.hasHeader('content-encoding')) return payload;
    reply.header('vary', 'accept-encoding');
    if (!/\bgzip\b/.test(request.headers['accept-encoding'] ?? '')) return payload;
    reply.header('content-encoding', 'gzip').removeHeader('content-length');
    return compressed(payload, { level: LEVEL });
  });
}
