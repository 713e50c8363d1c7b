import type { z } from 'zod';

type ReadOnly<T> = T extends object ? { readonly [K in keyof T]: ReadOnly<T[K]> } : T;

/** The value that a schema describes, to be read and not changed. */
export type Shape<S extends z.ZodType> = ReadOnly<z.output<S>>;
