/** What one column of a table holds, read off the Zod schema of its record so that nothing is said twice. */
import { z } from 'zod';
import { fromCelsius } from '../base/temperature.ts';
import { isoDay } from './schema.ts';

export type ColumnType = 'text' | 'day' | 'whole' | 'number' | 'word' | 'yes-no' | 'list';

export interface Column {
  /** Header: `target_count`. */
  readonly name: string;
  /** Property of the record: `targetCount`. */
  readonly key: string;
  readonly type: ColumnType;
  readonly about: string;
  /** `cell`: no cell may be empty. `column`: cells may, but the header must be there. `nothing`: may be left out. */
  readonly needs: 'cell' | 'column' | 'nothing';
  /** What an empty cell (or a column left out) stands for. */
  readonly empty: unknown;
  readonly words: readonly string[] | null;
  readonly minimum: number | null;
  readonly maximum: number | null;
  readonly maxLength: number | null;
  /** Ids hold no `;` or `|`, and lose the spaces around them. */
  readonly isId: boolean;
  /** Written only when some record has it. */
  readonly extension: boolean;
  /** The cell is in °F and the record in °C; `minimum` and `maximum` are in °F then. */
  readonly fahrenheit: boolean;
}

export type ColumnHints = Partial<Pick<Column, 'needs' | 'empty' | 'extension'>>;

export const keyOf = (name: string): string => name.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());

export function describeColumn(name: string, about: string, schema: z.ZodType, hints: ColumnHints = {}): Column {
  const optional = schema instanceof z.ZodOptional;
  const given = optional ? (schema.unwrap() as z.ZodType) : schema;
  const nullable = given instanceof z.ZodNullable;
  const inner = nullable ? (given.unwrap() as z.ZodType) : given;
  const blank = { words: null, minimum: null, maximum: null, maxLength: null, isId: false };
  const base = {
    name,
    key: keyOf(name),
    about,
    needs: nullable || optional ? 'nothing' : 'cell',
    // What may be left out of a record is left out, and not said to be nothing.
    empty: optional ? undefined : null,
    extension: false,
    fahrenheit: false,
    ...blank,
  } as const;
  return { ...base, ...traits(inner, nullable), ...(optional ? { empty: undefined } : {}), ...hints };
}

function traits(schema: z.ZodType, nullable: boolean): Pick<Column, 'type'> & Partial<Column> {
  if (schema === isoDay) return { type: 'day' };
  if (schema instanceof z.ZodEnum) return { type: 'word', words: schema.options as string[] };
  if (schema instanceof z.ZodBoolean) return { type: 'yes-no' };
  if (schema instanceof z.ZodArray) return { type: 'list', isId: true, maxLength: null, needs: 'nothing', empty: [] };
  if (schema instanceof z.ZodNumber) {
    const whole = schema.format === 'safeint';
    return { type: whole ? 'whole' : 'number', minimum: schema.minValue, maximum: schema.maxValue };
  }
  if (schema instanceof z.ZodString) {
    const mayBeEmpty = !schema.minLength;
    const needs = mayBeEmpty && !nullable ? ({ needs: 'nothing', empty: '' } as const) : {};
    return { type: 'text', maxLength: schema.maxLength, isId: !mayBeEmpty, ...needs };
  }
  throw new Error(`no column type for ${schema.constructor.name}`);
}

/** A °C column as it stands in a file written in °F: `tmin_f` in place of `tmin_c`. */
export function asFahrenheit(column: Column): Column {
  const limit = (value: number | null) => (value === null ? null : fromCelsius(value, 'F'));
  const { minimum, maximum } = column;
  const name = column.name.replace(/_c$/, '_f');
  return { ...column, name, minimum: limit(minimum), maximum: limit(maximum), fahrenheit: true };
}
