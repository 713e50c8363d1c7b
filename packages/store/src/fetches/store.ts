import { type Context, type Driver, type Procedure, rows, run } from '../procedure.ts';
import type { FetchState, FetchStore } from './types.ts';

export function fetchStoreOn({ read, write }: Pick<Driver, 'read' | 'write'>, context: Context): FetchStore {
  const { program } = context;
  return {
    list: () => read(list(context)),
    keep: (state) => write(program, keep(context, state)),
  };
}

function* list({ db, program }: Context): Procedure<FetchState[]> {
  const kept = yield* rows(db.selectFrom('weather_fetches').selectAll().where('program_id', '=', program).orderBy('source_id'));
  return kept.map(({ state }) => JSON.parse(state) as FetchState);
}

function* keep({ db, program }: Context, state: FetchState): Procedure<void> {
  yield* run(
    db
      .insertInto('weather_fetches')
      .values({ program_id: program, source_id: state.sourceId, state: JSON.stringify(state) })
      .onConflict((conflict) => conflict.columns(['program_id', 'source_id']).doUpdateSet({ state: JSON.stringify(state) })),
  );
}
