import type { Person } from '@duskwatch/core';
import { type Context, type Procedure, rows, run } from '../procedure.ts';
import { endPassKeysOf } from './pass-keys.ts';
import { add, note, personById, personNamed, setPasswordHash } from './people.ts';
import { endSessionsOf } from './sessions.ts';
import { invitationOf } from './tables.ts';
import type { Accepted, By, Invitation, NewPerson } from './types.ts';

export function* invite(context: Context, invitation: Invitation, by: By): Procedure<void> {
  yield* run(
    context.db.insertInto('invitations').values({
      program_id: context.program,
      invitation_id: invitation.invitationId,
      token_hash: invitation.tokenHash,
      role: invitation.role,
      farms: JSON.stringify(invitation.farms),
      person_id: invitation.personId,
      created_by: invitation.createdBy,
      created_at: invitation.createdAt,
      expires_at: invitation.expiresAt,
    }),
  );
  yield* note(context, by, 'invited', invitation.personId ?? invitation.invitationId, invitation.role);
}

export function* invitations({ db, program }: Context): Procedure<Invitation[]> {
  return (yield* rows(
    db
      .selectFrom('invitations')
      .selectAll()
      .where('program_id', '=', program)
      .orderBy('created_at', 'desc')
      .orderBy('invitation_id', 'desc'),
  )).map(invitationOf);
}

export function* withdraw(context: Context, invitationId: string, by: By): Procedure<boolean> {
  const found = (yield* invitations(context)).some((invitation) => invitation.invitationId === invitationId);
  if (!found) return false;
  yield* remove(context, invitationId);
  yield* note(context, by, 'invitation-withdrawn', invitationId, '');
  return true;
}

export function* invitationFor(
  context: Context,
  tokenHash: string,
): Procedure<{ invitation: Invitation; person: Person | null } | null> {
  const { db, program } = context;
  const [row] = yield* rows(
    db.selectFrom('invitations').selectAll().where('program_id', '=', program).where('token_hash', '=', tokenHash),
  );
  if (!row) return null;
  return { invitation: invitationOf(row), person: row.person_id === null ? null : yield* personById(context, row.person_id) };
}

export function* accept(
  context: Context,
  tokenHash: string,
  isValid: (invitation: Invitation) => boolean,
  newcomer: Omit<NewPerson, 'role' | 'farms'>,
  at: string,
): Procedure<Accepted> {
  const found = yield* invitationFor(context, tokenHash);
  if (!found || !isValid(found.invitation)) return { outcome: 'invalid' };
  const { invitation, person } = found;

  if (invitation.personId !== null) {
    if (person === null || person.disabled) return { outcome: 'invalid' };
    yield* setPassword(context, person.id, newcomer.passwordHash);
    yield* remove(context, invitation.invitationId);
    yield* note(context, { actor: person.id, at }, 'new-password', person.id, '');
    return { outcome: 'new-password', person };
  }

  if (yield* personNamed(context, newcomer.nameKey)) return { outcome: 'name-taken' };
  const { role, farms } = invitation;
  yield* add(context, { ...newcomer, role, farms });
  yield* remove(context, invitation.invitationId);
  yield* note(context, { actor: newcomer.id, at }, 'joined', newcomer.id, role);
  const { id, name, language } = newcomer;
  return { outcome: 'joined', person: { id, name, role, farms, language, disabled: false } };
}

function* setPassword(context: Context, personId: string, passwordHash: string): Procedure<void> {
  yield* setPasswordHash(context, personId, passwordHash);
  yield* endSessionsOf(context, personId);
  yield* endPassKeysOf(context, personId);
}

function* remove({ db, program }: Context, invitationId: string): Procedure<void> {
  yield* run(db.deleteFrom('invitations').where('program_id', '=', program).where('invitation_id', '=', invitationId));
}
