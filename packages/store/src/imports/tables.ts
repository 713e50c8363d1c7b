export interface ImportRow {
  program_id: string;
  import_id: string;
  file: string;
  author: string;
  at: string;
  first_sequence: number;
  last_sequence: number;
  added: number;
  changed: number;
  /** JSON: what was understood of the file. */
  reading: string | null;
  /** JSON: by which match it was read. */
  match: string | null;
  undone_by: string | null;
  undone_at: string | null;
}

export interface ImportTables {
  imports: ImportRow;
}

/** What came in together: its revisions are those between two sequences, as an import is one transaction. */
export function createImportTables(flavour: 'sqlite' | 'postgres'): readonly string[] {
  return [
    `create table imports (
      program_id text not null references programs (program_id),
      import_id text not null,
      file text not null,
      author text not null,
      at text not null,
      first_sequence integer not null,
      last_sequence integer not null,
      added integer not null,
      changed integer not null,
      reading text,
      match text,
      undone_by text,
      undone_at text,
      primary key (program_id, import_id)
    ) ${flavour === 'sqlite' ? 'strict' : ''}`,
  ];
}
