import { personById } from '../accounts/people.ts';
import { type Context, type Driver, type Procedure, rows, run } from '../procedure.ts';
import { endFeedOf } from './end.ts';
import type { CalendarFeedRow } from './tables.ts';
import type { CalendarFeed, CalendarStore, SentEntries } from './types.ts';

export function calendarStoreOn({ read, write }: Pick<Driver, 'read' | 'write'>, context: Context): CalendarStore {
  const { program } = context;
  return {
    make: (feed) => write(program, make(context, feed)),
    feedOf: (personId) => read(feedOf(context, personId)),
    revoke: (personId) => write(program, revoke(context, personId)),
    feed: (tokenHash) => read(feedWith(context, tokenHash)),
    keepSent: (tokenHash, sent) => write(program, keepSent(context, tokenHash, sent)),
  };
}

function* make(context: Context, { personId, tokenHash, madeAt }: CalendarFeed): Procedure<void> {
  const { db, program } = context;
  yield* endFeedOf(context, personId);
  const row = { program_id: program, person_id: personId, token_hash: tokenHash, made_at: madeAt, sent: '{}' };
  yield* run(db.insertInto('calendar_feeds').values(row));
}

function* feedOf({ db, program }: Context, personId: string): Procedure<CalendarFeed | null> {
  const [row] = yield* rows(
    db.selectFrom('calendar_feeds').selectAll().where('program_id', '=', program).where('person_id', '=', personId),
  );
  return row ? feedIn(row) : null;
}

function* revoke(context: Context, personId: string): Procedure<boolean> {
  const found = yield* feedOf(context, personId);
  if (found) yield* endFeedOf(context, personId);
  return found !== null;
}

function* feedWith(context: Context, tokenHash: string): Procedure<Awaited<ReturnType<CalendarStore['feed']>>> {
  const { db, program } = context;
  const [row] = yield* rows(
    db.selectFrom('calendar_feeds').selectAll().where('program_id', '=', program).where('token_hash', '=', tokenHash),
  );
  if (!row) return null;
  const person = yield* personById(context, row.person_id);
  return { feed: feedIn(row), person: person?.disabled ? null : person, sent: JSON.parse(row.sent) as SentEntries };
}

function* keepSent({ db, program }: Context, tokenHash: string, sent: SentEntries): Procedure<void> {
  yield* run(
    db
      .updateTable('calendar_feeds')
      .set({ sent: JSON.stringify(sent) })
      .where('program_id', '=', program)
      .where('token_hash', '=', tokenHash),
  );
}

const feedIn = ({ person_id, token_hash, made_at }: CalendarFeedRow): CalendarFeed => ({
  personId: person_id,
  tokenHash: token_hash,
  madeAt: made_at,
});
