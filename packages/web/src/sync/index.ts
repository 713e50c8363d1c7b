export { newRevision } from './new-revision.ts';
export { openOutbox, THIS_MACHINE } from './outbox.ts';
export type * from './types.ts';
