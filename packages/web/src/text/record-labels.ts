/** A schema that gains a property does not compile until the forms have a label for it, and words where it is a closed list. */
import type { ProgramSettings, RecordKind, RecordOf } from '@duskwatch/core';

/** A label for a property of a record, and what to know while filling it in. */
export interface Label {
  readonly label: string;
  readonly hint?: string;
}

export type Labels = { readonly [K in RecordKind]: { readonly [P in keyof Required<RecordOf<K>>]: Label } } & {
  /** Set elsewhere than in a form: for their history. */
  readonly settings: { readonly [P in keyof Required<ProgramSettings>]: Label };
};

/** The words that a value, or one of a list, is chosen from; never where any text may be written. */
type Words<V> = V extends readonly (infer Item)[] ? Words<Item> : V extends string ? (string extends V ? never : V) : never;

type Listed<R> = {
  readonly [P in keyof Required<R> as [Words<NonNullable<R[P]>>] extends [never] ? never : P]: Readonly<
    Record<Words<NonNullable<R[P]>>, string>
  >;
};

/** For each kind, its properties of a closed list, each with a name for every word of the list. */
export type ListedWords = { readonly [K in RecordKind]: Listed<RecordOf<K>> };
