import {
  RECORD_KINDS,
  type RecordKind,
  recordSchemas,
  settingsSchema,
  sheetProposalSchema,
  sheetReadingSchema,
} from '@duskwatch/core';
import { z } from 'zod';
import { instant } from '../records/revision.ts';

const match = sheetProposalSchema.shape.match;
const importId = z.string().regex(/^[0-9a-f-]{36}$/, { error: 'expected a UUIDv7' });

export const importBody = z.object({
  importId: importId.describe('UUIDv7, made by whoever imports: sent twice, it is done once.'),
  file: z.string().trim().min(1).max(200),
  reading: sheetReadingSchema,
  match,
  records: z.object(
    Object.fromEntries(RECORD_KINDS.map((kind) => [kind, z.array(recordSchemas[kind]).optional()])) as {
      readonly [K in RecordKind]: z.ZodOptional<z.ZodArray<(typeof recordSchemas)[K]>>;
    },
  ),
  settings: settingsSchema.optional().describe('Of a program folder: taken where the program has none of its own yet.'),
});

export const importDone = z.object({ added: z.int(), changed: z.int(), unchanged: z.int() });

const by = { author: z.string(), authorName: z.string(), at: instant };
export const keptImport = z
  .object({
    importId: z.string(),
    file: z.string(),
    reading: sheetReadingSchema.nullable(),
    match,
    ...by,
    added: z.int(),
    changed: z.int(),
    undone: z.object(by).nullable(),
  })
  .meta({ id: 'Import', description: 'A file whose records came in together.' });

export const undone = z.object({ undone: z.int().describe('Records that say again what they said before.') });
