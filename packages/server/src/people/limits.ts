import rateLimit from '@fastify/rate-limit';
import type { FastifyInstance } from 'fastify';

/** Bytes of a body about people: names, farms, a password. */
export const PEOPLE_BODY_BYTES = 64 * 1024;

/** Requests an address may make in a minute: an office of people at work stays far below. */
const REQUESTS_PER_MINUTE = 1_200;

/** For routes that check a password or a token, each of which costs the server some work. */
export const PASSWORD_LIMIT = { max: 60, timeWindow: '1 minute' } as const;

/** A calendar asks some times a day; many phones of an office come from one address. */
export const CALENDAR_LIMIT = { max: 60, timeWindow: '1 minute' } as const;

/** The coarse limit by address; who guesses passwords meets the finer one of `throttle` long before. */
export function limitRates(app: FastifyInstance): void {
  app.register(rateLimit, { global: true, max: REQUESTS_PER_MINUTE, timeWindow: '1 minute' });
}
