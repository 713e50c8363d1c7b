interface FetchRow {
  program_id: string;
  source_id: string;
  /** JSON of a `FetchState`. */
  state: string;
}

export interface FetchTables {
  weather_fetches: FetchRow;
}

export function createFetchTables(flavour: 'sqlite' | 'postgres'): readonly string[] {
  return [
    `create table weather_fetches (
      program_id text not null references programs (program_id),
      source_id text not null,
      state text not null,
      primary key (program_id, source_id)
    ) ${flavour === 'sqlite' ? 'strict' : ''}`,
  ];
}
