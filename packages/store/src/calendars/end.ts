import { type Context, type Procedure, run } from '../procedure.ts';

export function* endFeedOf({ db, program }: Context, personId: string): Procedure<void> {
  yield* run(db.deleteFrom('calendar_feeds').where('program_id', '=', program).where('person_id', '=', personId));
}
