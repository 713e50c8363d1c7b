import { problemSchema } from '@duskwatch/core';
import { z } from 'zod';
import { instant, recordValue, STORED_KINDS, storedKind } from '../records/revision.ts';

const id = z.string().describe('UUIDv7');
export const storedRevision = z.object({
  revisionId: id,
  recordId: id,
  kind: storedKind,
  baseRevisionId: id.nullable(),
  settles: z.array(id).exactOptional(),
  author: z.string().describe('Id of the person who wrote it.'),
  authorName: z.string().describe('Their name now; the id where they are not known any more.'),
  at: instant.describe('By the clock it was written with.'),
  value: recordValue.nullable().describe('As the schema of its kind; null: removed.'),
  key: z.string().describe('Natural key of the record at this revision.'),
  sequence: z.int().describe('Order of arrival, from 1.'),
  standing: z.enum(['current', 'removed', 'rival', 'past']),
  arrival: z
    .object({ receivedAt: instant, skewMs: z.number().nullable().describe("The writer's clock minus the server's.") })
    .nullable(),
  countedAt: instant.describe('When it was written as far as can be known; the later of two rival edits is current.'),
});

export const conflict = z.object({
  reason: z.enum(['same-record', 'same-key']),
  kind: storedKind,
  key: z.string(),
  held: storedRevision.describe('What holds until somebody decides.'),
  rivals: z.array(storedRevision),
});

export const offer = z.object({
  sentAt: instant
    .exactOptional()
    .describe("This instant by the sender's clock, from which the server measures how far it is off."),
  person: z.string().exactOptional().describe('Who the sender believes is signed in; refused when it is another.'),
  epoch: z.string().nullish().describe('The epoch of the last answer; refused when the server has another history.'),
  anchor: z.string().nullish().describe('A revision the server acknowledged; refused when it is not there.'),
  revisions: z
    .array(z.unknown())
    .max(1_000)
    .describe(`Each { revisionId, recordId, kind (${STORED_KINDS.join(', ')}), baseRevisionId, settles?, at, value }.`),
});

export const receipt = z.object({
  epoch: z.string().describe("Names this database's own history."),
  last: z.int().describe('Sequence of the newest revision of the program.'),
  skewMs: z.number().nullable(),
  added: z.array(id),
  alreadyThere: z.array(id),
  refused: z.array(z.object({ revisionId: z.string().nullable(), problems: z.array(problemSchema) })),
  conflicts: z.array(conflict),
});

export const elsewhere = z
  .object({ reason: z.enum(['other-person', 'other-history']), epoch: z.string(), problems: z.array(problemSchema) })
  .meta({ description: 'Nothing was taken.' });
