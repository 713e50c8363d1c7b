import { type Context, type Plan, run } from '../plan.ts';

export function* endFeedOf({ db, program }: Context, personId: string): Plan<void> {
  yield* run(db.deleteFrom('calendar_feeds').where('program_id', '=', program).where('person_id', '=', personId));
}
