/** People, their sessions and invitations, kept beside the records of the same program. */
import type { Language, Person, Role } from '@duskwatch/core';

/** Somebody new. Who makes one has checked it: the store only keeps names apart. */
export interface NewPerson extends Omit<Person, 'disabled'> {
  /** What two spellings of one name have in common; unique in a program. */
  readonly nameKey: string;
  /** In PHC string format. */
  readonly passwordHash: string;
}

/** Who did something, and the ISO 8601 instant in UTC with milliseconds. */
export interface By {
  readonly actor: string;
  readonly at: string;
}

export interface PersonChange {
  readonly role?: Role;
  readonly farms?: readonly string[];
  readonly disabled?: boolean;
}

/** A right to join, or to give oneself a new password; whoever holds the token has it. Only a hash of that is kept. */
export interface Invitation {
  readonly invitationId: string;
  readonly tokenHash: string;
  readonly role: Role;
  readonly farms: readonly string[];
  /** Somebody who is here already and needs a new password; null for a newcomer. */
  readonly personId: string | null;
  readonly createdBy: string;
  readonly createdAt: string;
  readonly expiresAt: string;
}

export interface Session {
  readonly tokenHash: string;
  readonly personId: string;
  readonly startedAt: string;
  readonly seenAt: string;
}

/** A key of Web Authentication that somebody's device keeps; here is its public half. */
export interface PassKey {
  /** Base64url, as is the key. */
  readonly credentialId: string;
  readonly personId: string;
  /** COSE. */
  readonly publicKey: string;
  /** How often it has signed, as far as its device says; 0 where it does not. */
  readonly counter: number;
  readonly transports: readonly string[];
  /** What its owner calls it. */
  readonly name: string;
  readonly madeAt: string;
  readonly usedAt: string | null;
}

export const PEOPLE_ACTIONS = [
  'first-person',
  'invited',
  'invitation-withdrawn',
  'joined',
  'new-password',
  'role-changed',
  'farms-changed',
  'disabled',
  'enabled',
  'password-changed',
  'pass-key-added',
  'pass-key-removed',
] as const;
export type PeopleAction = (typeof PEOPLE_ACTIONS)[number];

export interface PeopleLogEntry extends By {
  readonly action: PeopleAction;
  /** Id of the person, or of the invitation, that it happened to. */
  readonly subject: string;
  /** What it became: a role, farms with `; ` between. */
  readonly detail: string;
}

export type Accepted =
  | { readonly outcome: 'joined' | 'new-password'; readonly person: Person }
  | { readonly outcome: 'invalid' }
  | { readonly outcome: 'name-taken' };

/** Every method that changes people writes the log in the same transaction. */
export interface AccountStore {
  /** By name. */
  people(): Promise<Person[]>;
  personNamed(nameKey: string): Promise<{ readonly person: Person; readonly passwordHash: string } | null>;
  /** The first of all; false when somebody is here already. */
  addFirst(person: NewPerson, at: string): Promise<boolean>;
  /**
   * Ends the person's sessions when anything changed. Whoever is disabled or stops being a coordinator leaves no
   * invitation behind, neither made by them nor for them.
   */
  change(personId: string, change: PersonChange, by: By): Promise<'changed' | 'unknown' | 'last-coordinator'>;
  setLanguage(personId: string, language: Language): Promise<void>;
  /** Somebody's own choice: ends their sessions but the one it was made in; pass-keys stay. */
  changePassword(personId: string, passwordHash: string, sessionHash: string, at: string): Promise<void>;

  invite(invitation: Invitation, by: By): Promise<void>;
  /** Those neither used nor withdrawn, newest first; expired ones too. */
  invitations(): Promise<Invitation[]>;
  /** False when there is none. */
  withdraw(invitationId: string, by: By): Promise<boolean>;
  invitationFor(tokenHash: string): Promise<{ readonly invitation: Invitation; readonly person: Person | null } | null>;
  /**
   * Uses an invitation up. A newcomer gets the invitation's role and farms; somebody known gets the new password
   * alone, and their sessions and pass-keys end.
   */
  accept(
    tokenHash: string,
    isValid: (invitation: Invitation) => boolean,
    newcomer: Omit<NewPerson, 'role' | 'farms'>,
    at: string,
  ): Promise<Accepted>;

  /** Starts a session and forgets those begun or last seen before the given instants. */
  startSession(session: Session, forget: { readonly startedBefore: string; readonly seenBefore: string }): Promise<void>;
  /** Of a person who is not disabled. */
  session(tokenHash: string): Promise<{ readonly session: Session; readonly person: Person } | null>;
  /** Never moves backwards. */
  seen(tokenHash: string, at: string): Promise<void>;
  /** The last seen first. */
  sessionsOf(personId: string): Promise<Session[]>;
  endSession(tokenHash: string): Promise<void>;
  endSessionsOf(personId: string): Promise<void>;

  /** Refused when the credential is known already. */
  addPassKey(key: PassKey): Promise<boolean>;
  /** The newest first. */
  passKeysOf(personId: string): Promise<PassKey[]>;
  /** Of a person who is not disabled. */
  passKey(credentialId: string): Promise<{ readonly key: PassKey; readonly person: Person } | null>;
  /** Keeps how often it has signed; false when it has signed as often already, as a copy of it may have. */
  passKeyUsed(credentialId: string, counter: number, at: string): Promise<boolean>;
  /** False when the person has no such key. */
  removePassKey(personId: string, credentialId: string, at: string): Promise<boolean>;

  /** Newest first. */
  log(limit: number): Promise<PeopleLogEntry[]>;
}
