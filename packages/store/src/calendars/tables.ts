export interface CalendarFeedRow {
  program_id: string;
  person_id: string;
  token_hash: string;
  made_at: string;
  /** JSON object of entries by uid. */
  sent: string;
}

export interface CalendarTables {
  calendar_feeds: CalendarFeedRow;
}

/** Nothing points to people: a program without accounts has a feed as well. */
export function createCalendarTables(flavour: 'sqlite' | 'postgres'): readonly string[] {
  return [
    `create table calendar_feeds (
      program_id text not null references programs (program_id),
      person_id text not null,
      token_hash text not null,
      made_at text not null,
      sent text not null,
      primary key (program_id, person_id),
      unique (program_id, token_hash)
    ) ${flavour === 'sqlite' ? 'strict' : ''}`,
  ];
}
