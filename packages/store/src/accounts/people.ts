import type { Language, Person } from '@duskwatch/core';
import { endFeedOf } from '../calendars/end.ts';
import { type Context, type Procedure, rows, run } from '../procedure.ts';
import { uuidv7 } from '../uuid.ts';
import { endOtherSessionsOf, endSessionsOf } from './sessions.ts';
import { PERSON_COLUMNS, personOf } from './tables.ts';
import type { By, NewPerson, PeopleAction, PeopleLogEntry, PersonChange } from './types.ts';

export function* people({ db, program }: Context): Procedure<Person[]> {
  return (yield* rows(
    db.selectFrom('people').select(PERSON_COLUMNS).where('program_id', '=', program).orderBy('name').orderBy('person_id'),
  )).map(personOf);
}

export function* personById({ db, program }: Context, personId: string): Procedure<Person | null> {
  const [row] = yield* rows(
    db.selectFrom('people').select(PERSON_COLUMNS).where('program_id', '=', program).where('person_id', '=', personId),
  );
  return row ? personOf(row) : null;
}

export function* personNamed(
  { db, program }: Context,
  nameKey: string,
): Procedure<{ person: Person; passwordHash: string } | null> {
  const [row] = yield* rows(
    db
      .selectFrom('people')
      .select([...PERSON_COLUMNS, 'password_hash'])
      .where('program_id', '=', program)
      .where('name_key', '=', nameKey),
  );
  return row ? { person: personOf(row), passwordHash: row.password_hash } : null;
}

export function* addFirst(context: Context, person: NewPerson, at: string): Procedure<boolean> {
  if ((yield* people(context)).length > 0) return false;
  yield* add(context, person);
  yield* note(context, { actor: person.id, at }, 'first-person', person.id, person.role);
  return true;
}

export function* add({ db, program }: Context, person: NewPerson): Procedure<void> {
  yield* run(
    db.insertInto('people').values({
      program_id: program,
      person_id: person.id,
      name: person.name,
      name_key: person.nameKey,
      role: person.role,
      farms: JSON.stringify(person.farms),
      language: person.language,
      disabled: 0,
      password_hash: person.passwordHash,
    }),
  );
}

export function* change(
  context: Context,
  personId: string,
  wanted: PersonChange,
  by: By,
): Procedure<'changed' | 'unknown' | 'last-coordinator'> {
  const all = yield* people(context);
  const before = all.find((person) => person.id === personId);
  if (!before) return 'unknown';
  const after = { ...before, ...wanted };
  const actions = differences(before, after);
  if (actions.length === 0) return 'changed';
  if (!all.some((person) => runsTheProgram(person.id === personId ? after : person))) return 'last-coordinator';

  const { db, program } = context;
  yield* run(
    db
      .updateTable('people')
      .set({ role: after.role, farms: JSON.stringify(after.farms), disabled: after.disabled ? 1 : 0 })
      .where('program_id', '=', program)
      .where('person_id', '=', personId),
  );
  yield* endSessionsOf(context, personId);
  const invitations = db.deleteFrom('invitations').where('program_id', '=', program);
  if (!runsTheProgram(after)) yield* run(invitations.where('created_by', '=', personId));
  if (after.disabled) {
    yield* run(invitations.where('person_id', '=', personId));
    yield* endFeedOf(context, personId);
  }
  for (const [action, detail] of actions) yield* note(context, by, action, personId, detail);
  return 'changed';
}

const runsTheProgram = ({ role, disabled }: Person) => role === 'coordinator' && !disabled;

function differences(before: Person, after: Person): [PeopleAction, string][] {
  const actions: [PeopleAction, string][] = [];
  if (before.role !== after.role) actions.push(['role-changed', after.role]);
  const farms = after.farms.join('; ');
  if (before.farms.join('; ') !== farms) actions.push(['farms-changed', farms]);
  if (before.disabled !== after.disabled) actions.push([after.disabled ? 'disabled' : 'enabled', '']);
  return actions;
}

export function* setLanguage({ db, program }: Context, personId: string, language: Language): Procedure<void> {
  yield* run(db.updateTable('people').set({ language }).where('program_id', '=', program).where('person_id', '=', personId));
}

export function* changePassword(
  context: Context,
  personId: string,
  passwordHash: string,
  sessionHash: string,
  at: string,
): Procedure<void> {
  yield* setPasswordHash(context, personId, passwordHash);
  yield* endOtherSessionsOf(context, personId, sessionHash);
  yield* note(context, { actor: personId, at }, 'password-changed', personId, '');
}

export function* setPasswordHash({ db, program }: Context, personId: string, passwordHash: string): Procedure<void> {
  yield* run(
    db
      .updateTable('people')
      .set({ password_hash: passwordHash })
      .where('program_id', '=', program)
      .where('person_id', '=', personId),
  );
}

/** Writes a line of the log. */
export function* note(
  { db, program }: Context,
  { actor, at }: By,
  action: PeopleAction,
  subject: string,
  detail: string,
): Procedure<void> {
  yield* run(db.insertInto('people_log').values({ program_id: program, entry_id: uuidv7(), at, actor, action, subject, detail }));
}

export function* log({ db, program }: Context, limit: number): Procedure<PeopleLogEntry[]> {
  return yield* rows(
    db
      .selectFrom('people_log')
      .select(['at', 'actor', 'action', 'subject', 'detail'])
      .where('program_id', '=', program)
      .orderBy('entry_id', 'desc')
      .limit(limit),
  );
}
