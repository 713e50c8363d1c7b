import { createHash } from 'node:crypto';
import { calendarOf as entriesOf, type Person } from '@duskwatch/core';
import { z } from 'zod';
import { personOf, THIS_MACHINE, WITH_PLACES } from '../people/guard.ts';
import { CALENDAR_LIMIT } from '../people/limits.ts';
import { ownOrigin } from '../people/origin.ts';
import { newToken, tokenHash } from '../people/tokens.ts';
import { refuse } from '../problems.ts';
import type { RecordsRoute } from '../records/context.ts';
import { problems } from '../schemas/common.ts';

const SUFFIX = '.ics';

/** Calendars are fetched by programs that cannot sign in: the address itself is the secret. */
export const calendarRoute: RecordsRoute = (app, { reader, accounts, publicOrigin, store, now, dayFor, inTurn }) => {
  const nowText = () => new Date(now()).toISOString();

  /** Whose calendar it is now; null when it has ended. */
  async function ownerOf(hash: string) {
    const found = await store.calendars.feed(hash);
    if (found === null) return null;
    const own = found.feed.personId === THIS_MACHINE.id ? THIS_MACHINE : null;
    const person: Person | null = accounts === null ? own : found.person;
    return person === null || person.role === 'reader' ? null : { person, sent: found.sent };
  }

  app.get(
    '/calendar/:file',
    {
      config: { allow: 'anyone', rateLimit: CALENDAR_LIMIT },
      schema: {
        operationId: 'getCalendarFile',
        tags: ['calendar'],
        summary: 'A person’s calendar (RFC 5545): checks, lure changes, scouting and decisions due. Needs no session',
        params: z.object({ file: z.string().describe('The secret, and .ics') }),
        response: {
          200: { description: 'The calendar.', content: { 'text/calendar': { schema: z.string() } } },
          304: z.null(),
          404: problems,
        },
      },
    },
    async (request, reply) => {
      const { file } = request.params;
      const hash = tokenHash(file.slice(0, -SUFFIX.length));
      const owner = file.endsWith(SUFFIX) ? await ownerOf(hash) : null;
      if (owner === null) {
        return refuse(reply, 404, {
          where: {},
          got: 'a calendar address that has ended or never was',
          expected: 'an address from the Settings page',
          fix: 'make a new one there, and put it in the place of this one',
        });
      }
      const { person } = owner;
      const prepared = await reader.prepared(person, await dayFor(undefined));
      const { calendarOf } = await import('../documents/calendar.ts');
      const entries = entriesOf(prepared, person);
      const text = await inTurn(async () => {
        const sent = (await ownerOf(hash))?.sent ?? owner.sent;
        const calendar = calendarOf({
          program: prepared.program,
          entries,
          language: person.language,
          origin: ownOrigin(request, publicOrigin),
          sent,
          now: nowText(),
        });
        if (JSON.stringify(calendar.sent) !== JSON.stringify(sent)) await store.calendars.keepSent(hash, calendar.sent);
        return calendar.text;
      });
      const tag = `"${createHash('sha256').update(text).digest('base64url').slice(0, 27)}"`;
      reply.headers({ etag: tag, 'cache-control': 'private, no-cache' });
      if (isKnown(tag, request.headers['if-none-match'])) return reply.code(304).send(null);
      return reply.type('text/calendar; charset=utf-8').send(text);
    },
  );

  app.get(
    '/api/calendar',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'getCalendar',
        tags: ['calendar'],
        summary: 'Whether one has a calendar address, and since when',
        response: { 200: z.object({ madeAt: z.string().nullable() }) },
      },
    },
    async (request) => ({ madeAt: (await store.calendars.feedOf(personOf(request).id))?.madeAt ?? null }),
  );

  app.post(
    '/api/calendar',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'makeCalendar',
        tags: ['calendar'],
        summary: 'Make a calendar address of one’s own; it is told once, and ends one made before',
        response: { 201: z.object({ path: z.string(), madeAt: z.string() }) },
      },
    },
    async (request, reply) => {
      const token = newToken();
      const madeAt = nowText();
      await store.calendars.make({ personId: personOf(request).id, tokenHash: tokenHash(token), madeAt });
      return reply.code(201).send({ path: `/calendar/${token}${SUFFIX}`, madeAt });
    },
  );

  app.delete(
    '/api/calendar',
    {
      config: { allow: WITH_PLACES },
      schema: {
        operationId: 'endCalendar',
        tags: ['calendar'],
        summary: 'End one’s calendar address',
        response: { 204: z.null() },
      },
    },
    async (request, reply) => {
      await store.calendars.revoke(personOf(request).id);
      return reply.code(204).send(null);
    },
  );
};

/** Weak comparison (RFC 9110, section 13.1.2). */
const isKnown = (tag: string, asked: string | undefined): boolean =>
  asked !== undefined && (asked.trim() === '*' || asked.split(',').some((each) => each.trim().replace(/^W\//, '') === tag));
