export type StoreErrorCode = 'cannot-open' | 'not-a-database' | 'foreign-database' | 'newer-schema' | 'busy' | 'file-exists';

/** A database that cannot be used as asked. The message says what was found and what to do. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreErrorCode;

  constructor(code: StoreErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}
