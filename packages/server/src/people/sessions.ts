import type { Person } from '@duskwatch/core';
import type { AccountStore, Session } from '@duskwatch/store';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { newToken, tokenHash } from './tokens.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** A session ends when it was not used for so long, and in any case so long after it began. */
export const IDLE_MS = 14 * DAY_MS;
export const ABSOLUTE_MS = 90 * DAY_MS;
/** How finely it is kept when a session was last used: not every request writes. */
const SEEN_EVERY_MS = 60 * MINUTE_MS;
/** An instant further ahead than this was written under another clock, and nothing that counts from it is trusted. */
const CLOCK_TOLERANCE_MS = 5 * MINUTE_MS;

export const isFromTheFuture = (instant: string, now: Date): boolean => Date.parse(instant) - now.getTime() > CLOCK_TOLERANCE_MS;

function isAlive({ startedAt, seenAt }: Session, now: Date): boolean {
  if (isFromTheFuture(startedAt, now) || isFromTheFuture(seenAt, now)) return false;
  return now.getTime() - Date.parse(startedAt) < ABSOLUTE_MS && now.getTime() - Date.parse(seenAt) < IDLE_MS;
}

/** Over https; over plain http, on this machine, without what comes before the name. */
export const SESSION_COOKIE = '__Host-duskwatch';

/** Sessions of one program, held by the browser in a cookie that scripts cannot read. */
export interface Sessions {
  /** Ends the session the request came with and begins another: an id from before signing in is worth nothing after. */
  begin(request: FastifyRequest, reply: FastifyReply, person: Person): Promise<void>;
  person(request: FastifyRequest): Promise<Person | null>;
  /** Those of whoever asks, the last seen first, and which of them it is asked in. */
  own(request: FastifyRequest, person: Person): Promise<readonly (Session & { readonly here: boolean })[]>;
  /** The hash of the token that the request came with; null: it came with none. */
  hash(request: FastifyRequest): string | null;
  end(request: FastifyRequest, reply: FastifyReply): Promise<void>;
  endAll(reply: FastifyReply, person: Person): Promise<void>;
}

export function sessionsIn(store: AccountStore, now: () => Date, publicOrigin: string | undefined): Sessions {
  // A browser takes a `__Host-` cookie over https only, and from no other host of the same site.
  const isSecure = (request: FastifyRequest) => publicOrigin?.startsWith('https:') || request.protocol === 'https';
  const cookieName = (request: FastifyRequest) => (isSecure(request) ? SESSION_COOKIE : 'duskwatch');
  const hashIn = (request: FastifyRequest): string | null => {
    const token = request.server.parseCookie(request.headers.cookie ?? '')[cookieName(request)];
    return token ? tokenHash(token) : null;
  };
  const ago = (ms: number) => new Date(now().getTime() - ms).toISOString();

  return {
    async begin(request, reply, person) {
      const before = hashIn(request);
      if (before !== null) await store.endSession(before);
      const token = newToken();
      const at = now().toISOString();
      const session = { tokenHash: tokenHash(token), personId: person.id, startedAt: at, seenAt: at };
      await store.startSession(session, { startedBefore: ago(ABSOLUTE_MS), seenBefore: ago(IDLE_MS) });
      reply.setCookie(cookieName(request), token, {
        path: '/',
        httpOnly: true,
        sameSite: 'lax',
        secure: isSecure(request),
        maxAge: ABSOLUTE_MS / 1_000,
      });
    },
    async person(request) {
      const hash = hashIn(request);
      const found = hash === null ? null : await store.session(hash);
      const at = now();
      if (found === null || !isAlive(found.session, at)) return null;
      if (at.getTime() - Date.parse(found.session.seenAt) > SEEN_EVERY_MS) await store.seen(hash!, at.toISOString());
      return found.person;
    },
    hash: hashIn,
    async own(request, person) {
      const hash = hashIn(request);
      const at = now();
      return (await store.sessionsOf(person.id))
        .filter((session) => isAlive(session, at))
        .map((session) => ({ ...session, here: session.tokenHash === hash }));
    },
    async end(request, reply) {
      const hash = hashIn(request);
      if (hash !== null) await store.endSession(hash);
      forget(request, reply);
    },
    async endAll(reply, person) {
      await store.endSessionsOf(person.id);
      forget(reply.request, reply);
    },
  };

  function forget(request: FastifyRequest, reply: FastifyReply): void {
    reply.clearCookie(cookieName(request), { path: '/', httpOnly: true, sameSite: 'lax', secure: isSecure(request) });
  }
}
