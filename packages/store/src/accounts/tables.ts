import type { Language, Person, Role } from '@duskwatch/core';
import type { Invitation, PassKey, PeopleAction, Session } from './types.ts';

export interface PersonRow {
  program_id: string;
  person_id: string;
  name: string;
  name_key: string;
  role: Role;
  /** JSON array. */
  farms: string;
  language: Language;
  /** 0 or 1: SQLite knows no booleans. */
  disabled: number;
  password_hash: string;
}

export interface InvitationRow {
  program_id: string;
  invitation_id: string;
  token_hash: string;
  role: Role;
  farms: string;
  person_id: string | null;
  created_by: string;
  created_at: string;
  expires_at: string;
}

export interface SessionRow {
  program_id: string;
  token_hash: string;
  person_id: string;
  started_at: string;
  seen_at: string;
}

export interface PassKeyRow {
  program_id: string;
  credential_id: string;
  person_id: string;
  public_key: string;
  counter: number;
  /** JSON array. */
  transports: string;
  name: string;
  made_at: string;
  used_at: string | null;
}

interface PeopleLogRow {
  program_id: string;
  entry_id: string;
  at: string;
  actor: string;
  action: PeopleAction;
  subject: string;
  detail: string;
}

export interface AccountTables {
  people: PersonRow;
  invitations: InvitationRow;
  sessions: SessionRow;
  people_log: PeopleLogRow;
  pass_keys: PassKeyRow;
}

/** What a backup holds, in the order in which they depend on one another. Sessions end with the database they began in. */
export const BACKED_UP_TABLES = [
  'people',
  'invitations',
  'people_log',
  'calendar_feeds',
  'imports',
  'pass_keys',
  'weather_fetches',
] as const;

/** Instants are text that is compared as bytes on both databases. */
export function createAccountTables(flavour: 'sqlite' | 'postgres'): readonly string[] {
  const strict = flavour === 'sqlite' ? 'strict' : '';
  const bytes = flavour === 'postgres' ? 'collate "C"' : '';
  return [
    `create table people (
      program_id text not null references programs (program_id),
      person_id text not null,
      name text not null ${bytes},
      name_key text not null ${bytes},
      role text not null check (role in ('coordinator', 'scout', 'grower', 'reader')),
      farms text not null,
      language text not null,
      disabled integer not null check (disabled in (0, 1)),
      password_hash text not null,
      primary key (program_id, person_id),
      unique (program_id, name_key)
    ) ${strict}`,
    `create table invitations (
      program_id text not null references programs (program_id),
      invitation_id text not null,
      token_hash text not null,
      role text not null check (role in ('coordinator', 'scout', 'grower', 'reader')),
      farms text not null,
      person_id text,
      created_by text not null,
      created_at text not null ${bytes},
      expires_at text not null ${bytes},
      primary key (program_id, invitation_id),
      unique (program_id, token_hash),
      foreign key (program_id, person_id) references people (program_id, person_id)
    ) ${strict}`,
    `create table sessions (
      program_id text not null,
      token_hash text not null,
      person_id text not null,
      started_at text not null ${bytes},
      seen_at text not null ${bytes},
      primary key (program_id, token_hash),
      foreign key (program_id, person_id) references people (program_id, person_id)
    ) ${strict}`,
    'create index sessions_person on sessions (program_id, person_id)',
    `create table people_log (
      program_id text not null references programs (program_id),
      entry_id text not null ${bytes},
      at text not null,
      actor text not null,
      action text not null,
      subject text not null,
      detail text not null,
      primary key (program_id, entry_id)
    ) ${strict}`,
  ];
}

export function createPassKeyTables(flavour: 'sqlite' | 'postgres'): readonly string[] {
  return [
    `create table pass_keys (
      program_id text not null,
      credential_id text not null,
      person_id text not null,
      public_key text not null,
      counter ${flavour === 'postgres' ? 'double precision' : 'integer'} not null,
      transports text not null,
      name text not null,
      made_at text not null,
      used_at text,
      primary key (program_id, credential_id),
      foreign key (program_id, person_id) references people (program_id, person_id)
    ) ${flavour === 'sqlite' ? 'strict' : ''}`,
    'create index pass_keys_person on pass_keys (program_id, person_id)',
  ];
}

export const PERSON_COLUMNS = ['people.person_id', 'name', 'role', 'farms', 'language', 'disabled'] as const;

export const personOf = (row: Omit<PersonRow, 'program_id' | 'name_key' | 'password_hash'>): Person => ({
  id: row.person_id,
  name: row.name,
  role: row.role,
  farms: JSON.parse(row.farms) as string[],
  language: row.language,
  disabled: row.disabled === 1,
});

export const invitationOf = (row: Omit<InvitationRow, 'program_id'>): Invitation => ({
  invitationId: row.invitation_id,
  tokenHash: row.token_hash,
  role: row.role,
  farms: JSON.parse(row.farms) as string[],
  personId: row.person_id,
  createdBy: row.created_by,
  createdAt: row.created_at,
  expiresAt: row.expires_at,
});

export const sessionOf = (row: Omit<SessionRow, 'program_id'>): Session => ({
  tokenHash: row.token_hash,
  personId: row.person_id,
  startedAt: row.started_at,
  seenAt: row.seen_at,
});

export const passKeyOf = (row: Omit<PassKeyRow, 'program_id'>): PassKey => ({
  credentialId: row.credential_id,
  personId: row.person_id,
  publicKey: row.public_key,
  counter: row.counter,
  transports: JSON.parse(row.transports) as string[],
  name: row.name,
  madeAt: row.made_at,
  usedAt: row.used_at,
});
