/**
 * `busy`: somebody else writes for longer than one may wait. `away`: the database server does not answer just now.
 * `damaged`: what the file holds is not what was written to it. `disk-fault`: the disk did not do what it was asked.
 */
export type StoreErrorCode =
  | 'cannot-open'
  | 'not-a-database'
  | 'foreign-database'
  | 'newer-schema'
  | 'damaged'
  | 'disk-full'
  | 'disk-fault'
  | 'read-only'
  | 'busy'
  | 'away'
  | 'file-exists';

/** A database that cannot be used as asked. The message says what was found and what to do. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreErrorCode;

  constructor(code: StoreErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}
