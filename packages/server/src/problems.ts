import type { Problem } from '@duskwatch/core';
import { StoreError } from '@duskwatch/store';
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';

/** A request that cannot be answered, as every route says it. */
export function refuse(reply: FastifyReply, status: number, ...problems: readonly Problem[]): FastifyReply {
  return reply.code(status).type('application/json; charset=utf-8').send({ problems });
}

const RETRY_AFTER_S = 2;
const LATER = 'Send the same again in a moment: what was kept already is not kept twice. What is not sent waits on the phone.';
/** Troubles of the database that pass by themselves. */
const NOT_NOW: Partial<Record<StoreError['code'], string>> = {
  busy: 'a database that another process is writing to',
  away: 'a database server that does not answer just now',
};

/** Turns whatever went wrong into problems. What is our fault is logged and not told. */
export function onError(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  if (hasZodFastifySchemaValidationErrors(error)) return refuse(reply, 400, ...validationProblems(error, request));
  if (error.statusCode !== undefined && error.statusCode < 500)
    return refuse(reply, error.statusCode, {
      where: {},
      got: `${request.method} ${request.url}`,
      expected: error.message,
      fix: 'send the request as /api/openapi.json describes it',
    });
  const notNow = error instanceof StoreError ? NOT_NOW[error.code] : undefined;
  if (notNow) {
    request.log.warn(error);
    reply.header('retry-after', RETRY_AFTER_S);
    return refuse(reply, 503, { where: {}, got: notNow, expected: 'a database that answers', fix: LATER });
  }
  request.log.error(error);
  return refuse(reply, 500, {
    where: {},
    got: `${request.method} ${request.url}`,
    expected: 'an answer',
    fix: 'this is a fault in Duskwatch: its log says more',
  });
}

export function notFound(request: FastifyRequest, reply: FastifyReply): FastifyReply {
  return refuse(reply, 404, {
    where: {},
    got: `${request.method} ${request.url}`,
    expected: 'an address that /api/openapi.json lists',
    fix: 'check the address',
  });
}

export function noSuchField(reply: FastifyReply, fieldId: string): FastifyReply {
  return refuse(reply, 404, {
    where: { parameter: 'fieldId' },
    got: fieldId,
    expected: 'the field_id of a field in this program',
    fix: 'take one from /api/week',
  });
}

function validationProblems(error: FastifyError, request: FastifyRequest): Problem[] {
  return (error.validation ?? []).map((issue) => {
    const parameter = issue.instancePath.replace(/^\//, '');
    const sent = { ...(request.params as object), ...(request.query as object) } as Record<string, unknown>;
    return {
      where: { parameter },
      got: String(sent[parameter] ?? ''),
      expected: (issue.message ?? 'another value').replace(/^expected /, ''),
      fix: `give ${parameter} in that form, or leave it out`,
    };
  });
}
