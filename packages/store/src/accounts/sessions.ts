import type { Person } from '@duskwatch/core';
import { type Context, type Procedure, rows, run } from '../procedure.ts';
import { PERSON_COLUMNS, personOf, sessionOf } from './tables.ts';
import type { Session } from './types.ts';

export function* startSession(
  { db, program }: Context,
  session: Session,
  forget: { readonly startedBefore: string; readonly seenBefore: string },
): Procedure<void> {
  yield* run(
    db
      .deleteFrom('sessions')
      .where('program_id', '=', program)
      .where((its) => its.or([its('started_at', '<', forget.startedBefore), its('seen_at', '<', forget.seenBefore)])),
  );
  yield* run(
    db.insertInto('sessions').values({
      program_id: program,
      token_hash: session.tokenHash,
      person_id: session.personId,
      started_at: session.startedAt,
      seen_at: session.seenAt,
    }),
  );
}

export function* session({ db, program }: Context, tokenHash: string): Procedure<{ session: Session; person: Person } | null> {
  const [row] = yield* rows(
    db
      .selectFrom('sessions')
      .innerJoin('people', (join) =>
        join.onRef('people.program_id', '=', 'sessions.program_id').onRef('people.person_id', '=', 'sessions.person_id'),
      )
      .select([...PERSON_COLUMNS, 'token_hash', 'started_at', 'seen_at'])
      .where('sessions.program_id', '=', program)
      .where('token_hash', '=', tokenHash)
      .where('disabled', '=', 0),
  );
  return row ? { session: sessionOf(row), person: personOf(row) } : null;
}

export function* seen({ db, program }: Context, tokenHash: string, at: string): Procedure<void> {
  yield* run(
    db
      .updateTable('sessions')
      .set({ seen_at: at })
      .where('program_id', '=', program)
      .where('token_hash', '=', tokenHash)
      .where('seen_at', '<', at),
  );
}

export function* endSession({ db, program }: Context, tokenHash: string): Procedure<void> {
  yield* run(db.deleteFrom('sessions').where('program_id', '=', program).where('token_hash', '=', tokenHash));
}

export function* endSessionsOf({ db, program }: Context, personId: string): Procedure<void> {
  yield* run(db.deleteFrom('sessions').where('program_id', '=', program).where('person_id', '=', personId));
}

export function* sessionsOf({ db, program }: Context, personId: string): Procedure<Session[]> {
  const found = yield* rows(
    db
      .selectFrom('sessions')
      .select(['token_hash', 'person_id', 'started_at', 'seen_at'])
      .where('program_id', '=', program)
      .where('person_id', '=', personId)
      .orderBy('seen_at', 'desc')
      .orderBy('started_at', 'desc'),
  );
  return found.map(sessionOf);
}

export function* endOtherSessionsOf({ db, program }: Context, personId: string, kept: string): Procedure<void> {
  yield* run(
    db.deleteFrom('sessions').where('program_id', '=', program).where('person_id', '=', personId).where('token_hash', '<>', kept),
  );
}
