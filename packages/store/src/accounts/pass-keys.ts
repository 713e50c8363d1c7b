import type { Person } from '@duskwatch/core';
import { type Context, type Procedure, rows, run } from '../procedure.ts';
import { note, personById } from './people.ts';
import { passKeyOf } from './tables.ts';
import type { PassKey } from './types.ts';

const COLUMNS = [
  'credential_id',
  'pass_keys.person_id',
  'public_key',
  'counter',
  'transports',
  'pass_keys.name',
  'made_at',
  'used_at',
] as const;

export function* addPassKey(context: Context, key: PassKey): Procedure<boolean> {
  const { db, program } = context;
  if (yield* keyOf(context, key.credentialId)) return false;
  yield* run(
    db.insertInto('pass_keys').values({
      program_id: program,
      credential_id: key.credentialId,
      person_id: key.personId,
      public_key: key.publicKey,
      counter: key.counter,
      transports: JSON.stringify(key.transports),
      name: key.name,
      made_at: key.madeAt,
      used_at: key.usedAt,
    }),
  );
  yield* note(context, { actor: key.personId, at: key.madeAt }, 'pass-key-added', key.personId, key.name);
  return true;
}

export function* passKeysOf({ db, program }: Context, personId: string): Procedure<PassKey[]> {
  const found = yield* rows(
    db
      .selectFrom('pass_keys')
      .select(COLUMNS)
      .where('program_id', '=', program)
      .where('person_id', '=', personId)
      .orderBy('made_at', 'desc')
      .orderBy('credential_id'),
  );
  return found.map(passKeyOf);
}

export function* passKey(context: Context, credentialId: string): Procedure<{ key: PassKey; person: Person } | null> {
  const key = yield* keyOf(context, credentialId);
  const person = key && (yield* personById(context, key.personId));
  return key && person && !person.disabled ? { key, person } : null;
}

function* keyOf({ db, program }: Context, credentialId: string): Procedure<PassKey | null> {
  const [row] = yield* rows(
    db.selectFrom('pass_keys').select(COLUMNS).where('program_id', '=', program).where('credential_id', '=', credentialId),
  );
  return row ? passKeyOf(row) : null;
}

/** Devices that count never say 0 again once they have said more; those that do not count say 0 each time. */
export function* passKeyUsed(context: Context, credentialId: string, counter: number, at: string): Procedure<boolean> {
  const key = yield* keyOf(context, credentialId);
  if (!key || ((counter > 0 || key.counter > 0) && counter <= key.counter)) return false;
  const { db, program } = context;
  yield* run(
    db
      .updateTable('pass_keys')
      .set({ counter, used_at: at })
      .where('program_id', '=', program)
      .where('credential_id', '=', credentialId),
  );
  return true;
}

export function* removePassKey(context: Context, personId: string, credentialId: string, at: string): Procedure<boolean> {
  const { db, program } = context;
  const key = yield* keyOf(context, credentialId);
  if (key?.personId !== personId) return false;
  yield* run(db.deleteFrom('pass_keys').where('program_id', '=', program).where('credential_id', '=', credentialId));
  yield* note(context, { actor: personId, at }, 'pass-key-removed', personId, key.name);
  return true;
}

export function* endPassKeysOf({ db, program }: Context, personId: string): Procedure<void> {
  yield* run(db.deleteFrom('pass_keys').where('program_id', '=', program).where('person_id', '=', personId));
}
