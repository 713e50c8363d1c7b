import type { Problem, StorageTrouble } from '@duskwatch/core';
import { StoreError } from '@duskwatch/store';
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';

/** A request that cannot be answered, as every route says it. */
export function refuse(reply: FastifyReply, status: number, ...problems: readonly Problem[]): FastifyReply {
  return reply.code(status).type('application/json; charset=utf-8').send({ problems });
}

const RETRY_AFTER_S = 2;
const LATER = 'Send the same again in a moment: what was kept already is not kept twice. What is not sent waits on the phone.';
const NOT_KEPT = 'Nothing of this was kept; what was kept before is untouched.';

/** What is said of each trouble of the database or its disk, and the status it is said with. */
const STORAGE: Readonly<Record<StorageTrouble, { readonly status: number; readonly got: string; readonly fix: string }>> = {
  busy: { status: 503, got: 'a database that another process is writing to', fix: LATER },
  away: { status: 503, got: 'a database server that does not answer just now', fix: LATER },
  'disk-full': {
    status: 507,
    got: 'a disk of the server that is full',
    fix: `${NOT_KEPT} Ask whoever runs the server to make room; then send the same again.`,
  },
  'disk-fault': {
    status: 500,
    got: 'a disk of the server that does not do what it is asked',
    fix: `${NOT_KEPT} Ask whoever runs the server to look at the disk; its log says more.`,
  },
  'read-only': {
    status: 500,
    got: 'a data folder that the server may not write to',
    fix: `${NOT_KEPT} Ask whoever runs the server to put its permissions right; its log says which.`,
  },
  damaged: {
    status: 500,
    got: 'a damaged database',
    fix: 'What cannot be vouched for is not shown. Ask whoever runs the server to bring back the newest sound backup, and write nothing more until then.',
  },
};

/** What the system says of a file or folder, here of photos (errno.h of POSIX.1-2024). */
const OF_THE_SYSTEM: Readonly<Record<string, StorageTrouble>> = {
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
  EIO: 'disk-fault',
};

function storageTrouble(error: FastifyError): StorageTrouble | undefined {
  if (error instanceof StoreError) return isTrouble(error.code) ? error.code : undefined;
  return 'syscall' in error ? OF_THE_SYSTEM[error.code] : undefined;
}

const isTrouble = (code: string): code is StorageTrouble => Object.hasOwn(STORAGE, code);

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
  const trouble = storageTrouble(error);
  if (trouble) {
    const { status, got, fix } = STORAGE[trouble];
    if (status === 503) {
      request.log.warn(error);
      reply.header('retry-after', RETRY_AFTER_S);
    } else request.log.error(error);
    return refuse(reply, status, {
      where: {},
      got,
      expected: 'data that can be read and kept',
      fix,
      fault: { kind: 'storage', trouble },
    });
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
