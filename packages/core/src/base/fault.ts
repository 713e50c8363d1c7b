/** What exactly is wrong, as values: what a problem says in English, other languages say from these. */
import { z } from 'zod';
import type { Shape } from './shape.ts';

const texts = z.array(z.string());

const wantedSchema = z
  .object({
    type: z.enum(['text', 'day', 'whole', 'number', 'word', 'yes-no', 'list']),
    minimum: z.number().nullable(),
    maximum: z.number().nullable(),
  })
  .meta({ id: 'Wanted' });
export type Wanted = Shape<typeof wantedSchema>;

const hintSchema = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('fill-in') }),
    z.object({ kind: z.literal('figures-only') }),
    z.object({ kind: z.literal('whole') }),
    z.object({ kind: z.literal('correct') }),
    z.object({ kind: z.literal('fahrenheit') }),
    z.object({ kind: z.literal('one-of') }),
    z.object({ kind: z.literal('write'), texts }).describe('Texts of which one was probably meant.'),
  ])
  .meta({ id: 'Hint' });
export type Hint = Shape<typeof hintSchema>;

const storageTroubleSchema = z
  .enum(['busy', 'away', 'disk-full', 'disk-fault', 'read-only', 'damaged'])
  .meta({ id: 'StorageTrouble' });
export type StorageTrouble = Shape<typeof storageTroubleSchema>;

export const faultSchema = z
  .discriminatedUnion('kind', [
    z
      .object({ kind: z.literal('unreadable'), wanted: wantedSchema, hint: hintSchema })
      .describe('A cell or box that holds something else than it should; `hint` says what to do about it.'),
    z.object({ kind: z.literal('too-long'), longest: z.int(), length: z.int() }),
    z.object({ kind: z.literal('sign-in-id') }),
    z.object({ kind: z.literal('no-such-day') }),
    z.object({ kind: z.literal('future-day'), last: z.iso.date() }),
    z.object({ kind: z.literal('wrong-order'), first: z.string(), from: z.iso.date(), second: z.string() }),
    z.object({ kind: z.literal('time-zone') }),
    z.object({ kind: z.literal('too-many-visits'), most: z.int() }),
    z.object({ kind: z.literal('uncounted') }),
    z.object({ kind: z.literal('reason-of-fit'), condition: z.string() }),
    z.object({ kind: z.literal('reason-unsaid') }),
    z.object({ kind: z.literal('product-said') }),
    z.object({ kind: z.literal('rate-without-unit') }),
    z.object({ kind: z.literal('low-above-high') }),
    z.object({ kind: z.literal('forecast-after') }),
    z.object({ kind: z.literal('fills-itself') }),
    z.object({ kind: z.literal('source-lacks'), column: z.string() }),
    z.object({ kind: z.literal('infested-above-examined'), infested: z.number(), examined: z.number() }),
    z.object({ kind: z.literal('places-do-not-add-up'), infested: z.number(), examined: z.number() }),
    z.object({ kind: z.literal('worn-above-stock'), wornOut: z.number(), onHand: z.number() }),
    z.object({ kind: z.literal('unknown-insect'), close: texts }),
    z.object({ kind: z.literal('unknown-stage'), crop: z.string(), close: texts }),
    z.object({ kind: z.literal('key-twice') }),
    z.object({ kind: z.literal('repeated-check') }),
    z.object({ kind: z.literal('unknown-reference'), to: z.enum(['fields', 'traps']), close: texts }),
    z.object({ kind: z.literal('before-hung'), trapId: z.string(), hungOn: z.iso.date() }),
    z.object({ kind: z.literal('after-taken-down'), trapId: z.string(), takenDownOn: z.iso.date() }),
    z.object({ kind: z.literal('unknown-weather-source'), known: texts }),
    z.object({ kind: z.literal('may-not-write'), role: z.string() }),
    z.object({ kind: z.literal('other-farm') }),
    z.object({ kind: z.literal('too-large') }),
    z.object({ kind: z.literal('photo-type'), types: texts }),
    z
      .object({ kind: z.literal('storage'), trouble: storageTroubleSchema })
      .describe('The server cannot read or keep its data just now; nothing of the request was kept.'),
  ])
  .meta({ id: 'Fault', description: 'What exactly is wrong, as values, for languages other than English.' });
export type Fault = Shape<typeof faultSchema>;
