/** What people do with accounts, whichever route they come by. */
import { type Language, nameKey, type Person, tidyName } from '@duskwatch/core';
import { type Accepted, type AccountStore, type Invitation, uuidv7 } from '@duskwatch/store';
import { type PassKeys, passKeysIn } from './pass-keys.ts';
import { hashPassword, isPassword } from './passwords.ts';
import { isFromTheFuture, type Sessions, sessionsIn } from './sessions.ts';
import { type Throttle, throttle } from './throttle.ts';
import { isCode, newToken, tokenHash } from './tokens.ts';

export interface AccountsOptions {
  readonly store: AccountStore;
  /** Whoever types it may be the first coordinator, while nobody else is here. Printed on the terminal, kept nowhere. */
  readonly firstPersonCode?: string | undefined;
  /** Where people reach the server, when a proxy stands in front of it: `https://moths.example`. */
  readonly publicOrigin?: string | undefined;
  readonly now?: () => Date;
  /** Seconds of a clock that only runs forwards. */
  readonly elapsedS?: () => number;
}

/** What a newcomer says of themselves. */
interface Introduction {
  readonly name: string;
  readonly password: string;
  readonly language: Language;
}

export type Attempt = { readonly person: Person } | { readonly waitS: number } | 'wrong';

export interface Accounts {
  readonly store: AccountStore;
  readonly sessions: Sessions;
  readonly passKeys: PassKeys;
  readonly now: () => Date;
  signIn(name: string, password: string, address: string): Promise<Attempt>;
  /** Somebody's own new password; `sessionHash` of the session that stays. */
  changePassword(person: Person, password: string, sessionHash: string): Promise<void>;
  needsFirstPerson(): Promise<boolean>;
  firstPerson(code: string, introduction: Introduction, address: string): Promise<Attempt>;
  /** Its token is told once and kept nowhere. */
  invite(by: Person, grant: Pick<Invitation, 'role' | 'farms' | 'personId'>): Promise<{ invitation: Invitation; token: string }>;
  isOpen(invitation: Invitation): boolean;
  /** What an open invitation is for; null when there is none, or none any more. */
  invitationFor(token: string): Promise<{ invitation: Invitation; person: Person | null } | null>;
  accept(token: string, introduction: Introduction): Promise<Accepted>;
}

const INVITATION_MS = 7 * 86_400_000;

/**
 * Five attempts at a name are free; the delay then doubles up to an hour, 24 guesses a day. An address may be that
 * of a whole office, so more are free. Common practice, no source.
 */
const BY_NAME = { free: 5, longestS: 3_600, memoryS: 86_400 };
const BY_ADDRESS = { free: 30, longestS: 900, memoryS: 3_600 };

/** In capitals, as no name's key is. */
const FIRST_PERSON = 'FIRST PERSON';

export function accountsOn({
  store,
  firstPersonCode,
  publicOrigin,
  now = () => new Date(),
  elapsedS = () => performance.now() / 1_000,
}: AccountsOptions): Accounts {
  const byName = throttle(BY_NAME, elapsedS);
  const byAddress = throttle(BY_ADDRESS, elapsedS);

  /** Makes an attempt, unless too many were made under the name or from the address. */
  async function attempt(name: string, address: string, make: () => Promise<Person | null>): Promise<Attempt> {
    const waitS = early([byAddress, address], [byName, name]);
    if (waitS !== null) return { waitS };
    const person = await make();
    if (person === null) return 'wrong';
    byName.clear(name);
    byAddress.undo(address);
    return { person };
  }

  const newcomer = async ({ name, password, language }: Introduction) => ({
    id: uuidv7(),
    name: tidyName(name),
    nameKey: nameKey(name),
    language,
    passwordHash: await hashPassword(password),
  });

  const isOpen = ({ createdAt, expiresAt }: Invitation) =>
    !isFromTheFuture(createdAt, now()) && now().getTime() < Date.parse(expiresAt);

  return {
    store,
    sessions: sessionsIn(store, now, publicOrigin),
    passKeys: passKeysIn(store, now),
    now,
    signIn(name, password, address) {
      const key = nameKey(name);
      return attempt(key, address, async () => {
        const known = await store.personNamed(key);
        // Checked before anything else is looked at: every refusal takes as long.
        const right = await isPassword(password, known?.passwordHash ?? null);
        return right && !known!.person.disabled ? known!.person : null;
      });
    },
    async changePassword(person, password, sessionHash) {
      await store.changePassword(person.id, await hashPassword(password), sessionHash, now().toISOString());
    },
    needsFirstPerson: async () => (await store.people()).length === 0,
    firstPerson(code, introduction, address) {
      return attempt(FIRST_PERSON, address, async () => {
        if (firstPersonCode === undefined || !isCode(code, firstPersonCode)) return null;
        const person = { ...(await newcomer(introduction)), role: 'coordinator' as const, farms: [] };
        if (!(await store.addFirst(person, now().toISOString()))) return null;
        const { id, name, role, farms, language } = person;
        return { id, name, role, farms, language, disabled: false };
      });
    },
    async invite(by, grant) {
      const token = newToken();
      const invitation: Invitation = {
        ...grant,
        invitationId: uuidv7(),
        tokenHash: tokenHash(token),
        createdBy: by.id,
        createdAt: now().toISOString(),
        expiresAt: new Date(now().getTime() + INVITATION_MS).toISOString(),
      };
      await store.invite(invitation, { actor: by.id, at: invitation.createdAt });
      return { invitation, token };
    },
    isOpen,
    async invitationFor(token) {
      const found = await store.invitationFor(tokenHash(token));
      return found && isOpen(found.invitation) ? found : null;
    },
    async accept(token, introduction) {
      return store.accept(tokenHash(token), isOpen, await newcomer(introduction), now().toISOString());
    },
  };
}

/** Counts an attempt under each key; the seconds to wait when one of them asks for it. */
function early(...keys: readonly (readonly [Throttle, string])[]): number | null {
  for (const [each, key] of keys) {
    const waitS = each.attempt(key);
    if (waitS !== null) return waitS;
  }
  return null;
}
