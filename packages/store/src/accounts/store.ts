import type { Context, Driver } from '../procedure.ts';
import { accept, invitationFor, invitations, invite, withdraw } from './invitations.ts';
import { addPassKey, passKey, passKeysOf, passKeyUsed, removePassKey } from './pass-keys.ts';
import { addFirst, change, changePassword, log, people, personNamed, setLanguage } from './people.ts';
import { endSession, endSessionsOf, seen, session, sessionsOf, startSession } from './sessions.ts';
import type { AccountStore } from './types.ts';

export function accountStoreOn({ read, write }: Pick<Driver, 'read' | 'write'>, context: Context): AccountStore {
  const { program } = context;
  return {
    people: () => read(people(context)),
    personNamed: (nameKey) => read(personNamed(context, nameKey)),
    addFirst: (person, at) => write(program, addFirst(context, person, at)),
    change: (personId, wanted, by) => write(program, change(context, personId, wanted, by)),
    setLanguage: (personId, language) => write(program, setLanguage(context, personId, language)),
    changePassword: (personId, hash, kept, at) => write(program, changePassword(context, personId, hash, kept, at)),
    invite: (invitation, by) => write(program, invite(context, invitation, by)),
    invitations: () => read(invitations(context)),
    withdraw: (invitationId, by) => write(program, withdraw(context, invitationId, by)),
    invitationFor: (tokenHash) => read(invitationFor(context, tokenHash)),
    accept: (tokenHash, isValid, newcomer, at) => write(program, accept(context, tokenHash, isValid, newcomer, at)),
    startSession: (begun, forget) => write(program, startSession(context, begun, forget)),
    session: (tokenHash) => read(session(context, tokenHash)),
    sessionsOf: (personId) => read(sessionsOf(context, personId)),
    seen: (tokenHash, at) => write(program, seen(context, tokenHash, at)),
    endSession: (tokenHash) => write(program, endSession(context, tokenHash)),
    endSessionsOf: (personId) => write(program, endSessionsOf(context, personId)),
    addPassKey: (key) => write(program, addPassKey(context, key)),
    passKeysOf: (personId) => read(passKeysOf(context, personId)),
    passKey: (credentialId) => read(passKey(context, credentialId)),
    passKeyUsed: (credentialId, counter, at) => write(program, passKeyUsed(context, credentialId, counter, at)),
    removePassKey: (personId, credentialId, at) => write(program, removePassKey(context, personId, credentialId, at)),
    log: (limit) => read(log(context, limit)),
  };
}
