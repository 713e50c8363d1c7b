import { LANGUAGES, ROLES } from '@duskwatch/core';
import { PEOPLE_ACTIONS } from '@duskwatch/store';
import { z } from 'zod';

const instant = z.iso.datetime();
export const role = z.enum(ROLES);
export const language = z.enum(LANGUAGES);
export const farms = z
  .array(z.string().max(80))
  .max(500)
  .describe('Farms of the fields that a grower sees; empty in other roles.');

export const person = z.object({
  id: z.string(),
  name: z.string(),
  role,
  farms: z.array(z.string()),
  language,
  disabled: z.boolean(),
});

export const session = z.object({
  mode: z.enum(['single-user', 'accounts']).describe('single-user: whoever sits at this machine is the coordinator.'),
  person: person.nullable().describe('Who is signed in; null: nobody.'),
  needsFirstPerson: z.boolean().describe('True until the first coordinator has typed the code printed at the start.'),
});

/** Longer than any name or password accepted, so that what is wrong with it can be said. */
const typed = z.string().max(2_000);

export const credentials = z.object({ name: typed, password: typed });
export const passwordChange = z.object({ password: typed.describe('The one that holds now.'), newPassword: typed });
export const ownSession = z.object({
  startedAt: instant,
  seenAt: instant.describe('To within the hour.'),
  here: z.boolean().describe('The one that asks.'),
});
export const introduction = credentials.extend({ language: language.default('en') });

export const invitation = z.object({
  id: z.string(),
  role,
  farms: z.array(z.string()),
  person: z.object({ id: z.string(), name: z.string() }).nullable().describe('Whose new password it is for; null: a newcomer.'),
  createdBy: z.string().describe('Name of the coordinator.'),
  createdAt: instant,
  expiresAt: instant,
});

export const logEntry = z.object({
  at: instant,
  actor: z.string().describe('Name of who did it.'),
  action: z.enum(PEOPLE_ACTIONS),
  subject: z.string().nullable().describe('Name of whom it happened to; null: an invitation that nobody used yet.'),
  detail: z.string().describe('What it became: a role, farms with ; between.'),
});
