import type { Assumption } from './types.ts';

/** Figures under their ids, each carrying its own. */
export const namedFigures = <Id extends string>(
  figures: Readonly<Record<Id, Omit<Assumption, 'id'>>>,
): { readonly [K in Id]: Assumption } =>
  Object.fromEntries(Object.entries<Omit<Assumption, 'id'>>(figures).map(([id, figure]) => [id, { id, ...figure }])) as {
    readonly [K in Id]: Assumption;
  };
