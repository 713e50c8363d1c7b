import { type Column, type RecordKind, type RecordOf, tables } from '@duskwatch/core';
import { writtenColumns } from '../table/write-table.ts';

/** Field of a Table Schema (Data Package version 2, https://datapackage.org/standard/table-schema/). */
interface FieldDescriptor {
  readonly name: string;
  readonly type: 'string' | 'date' | 'integer' | 'number' | 'boolean' | 'list';
  readonly description: string;
  readonly constraints?: Readonly<Record<string, unknown>>;
  readonly delimiter?: string;
  readonly itemType?: string;
  readonly trueValues?: readonly string[];
  readonly falseValues?: readonly string[];
}

export interface TableSchema {
  readonly $schema: string;
  readonly fields: readonly FieldDescriptor[];
  readonly missingValues: readonly string[];
  readonly primaryKey?: readonly string[];
  readonly foreignKeys?: readonly {
    readonly fields: readonly string[];
    readonly reference: { readonly resource: string; readonly fields: readonly string[] };
  }[];
}

const TYPES = {
  text: 'string',
  word: 'string',
  day: 'date',
  whole: 'integer',
  number: 'number',
  'yes-no': 'boolean',
  list: 'list',
} as const satisfies Record<Column['type'], FieldDescriptor['type']>;

/** The Table Schema of a file that holds these records. */
export function tableSchema<K extends RecordKind>(kind: K, records: readonly RecordOf<K>[]): TableSchema {
  const { primaryKey, foreignKeys } = tables[kind];
  return {
    $schema: 'https://datapackage.org/profiles/2.0/tableschema.json',
    fields: writtenColumns(kind, records).map(fieldDescriptor),
    missingValues: [''],
    ...(primaryKey.length > 0 && { primaryKey }),
    ...(foreignKeys.length > 0 && {
      foreignKeys: foreignKeys.map(({ column, table }) => ({
        fields: [column],
        reference: { resource: table, fields: [column] },
      })),
    }),
  };
}

function fieldDescriptor(column: Column): FieldDescriptor {
  const { name, type, about: description } = column;
  const constraints = constraintsOf(column);
  return {
    name,
    type: TYPES[type],
    description,
    ...(type === 'list' && { delimiter: ';', itemType: 'string' }),
    ...(type === 'yes-no' && { trueValues: ['yes'], falseValues: ['no'] }),
    ...(Object.keys(constraints).length > 0 && { constraints }),
  };
}

function constraintsOf({ needs, words, minimum, maximum, maxLength }: Column): Record<string, unknown> {
  return {
    ...(needs === 'cell' && { required: true }),
    ...(words !== null && { enum: words }),
    ...(minimum !== null && { minimum }),
    ...(maximum !== null && { maximum }),
    ...(maxLength !== null && { maxLength }),
  };
}
