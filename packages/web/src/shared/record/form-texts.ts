/** A record as it is being written: text in boxes, read by the core's own cell readers, so that a form says what an import says. */
import {
  CellFault,
  type Column,
  catalogueWords,
  cellReader,
  cellText,
  checkProgram,
  emptyProgram,
  keyOf,
  type Problem,
  type Program,
  type RecordKind,
  type RecordOf,
  recordSchemas,
  shapeFault,
  tables,
  unreadable,
  wanted,
} from '@duskwatch/core';
import { recordWords } from '../../text/record.ts';

/** Text by property; lists with `;` between. */
export type FormTexts = Readonly<Record<string, string>>;

/** What a new record may refer to, so that it can be judged before it is sent. */
export type Around = Partial<Pick<Program, 'fields' | 'traps' | 'checks'>>;

export interface ReadForm<K extends RecordKind> {
  /** Null when anything is wrong. */
  readonly value: RecordOf<K> | null;
  /** What is wrong, by property. */
  readonly problems: ReadonlyMap<string, readonly Problem[]>;
}

/** Columns of a kind, and the properties that no table holds a column for. */
const columnsOf = (kind: RecordKind): readonly Column[] => tables[kind].columns;

export function formTextsOf<K extends RecordKind>(kind: K, value: Partial<RecordOf<K>>): FormTexts {
  const held = value as Readonly<Record<string, unknown>>;
  return Object.fromEntries(columnsOf(kind).map((column) => [column.key, cellText(column, held[column.key])]));
}

/**
 * @param kept properties that the form does not show, as they stay
 * @param fresh true for a record that must not take the place of another
 * @param demanded properties that must be filled in here, though the table lets them be empty
 */
export function readForm<K extends RecordKind>(
  kind: K,
  draft: FormTexts,
  {
    kept = {},
    around = {},
    fresh = false,
    demanded = [],
  }: {
    readonly kept?: Partial<RecordOf<K>>;
    readonly around?: Around;
    readonly fresh?: boolean;
    readonly demanded?: readonly string[];
  } = {},
): ReadForm<K> {
  const problems: Problem[] = [];
  const read: Record<string, unknown> = { ...kept };
  for (const column of columnsOf(kind)) {
    if (column.key in kept) continue;
    const text = draft[column.key] ?? '';
    const value = cellReader(column, { decimalComma: true })(text);
    const faulty = value instanceof CellFault;
    const blank = text.trim() === '';
    if (!faulty && value !== undefined) read[column.key] = value;
    if (blank && (faulty || demanded.includes(column.key)))
      problems.push({
        where: { column: column.name },
        got: recordWords.emptyHere,
        expected: wanted(column),
        fix: recordWords.fillIn,
        fault: unreadable(column, { kind: 'fill-in' }),
      });
    else if (faulty)
      problems.push({
        where: { column: column.name },
        got: text,
        expected: value.expected,
        fix: value.fix,
        ...(value.fault !== null && { fault: value.fault }),
      });
  }
  if (problems.length === 0) problems.push(...judge(kind, read as RecordOf<K>, around, fresh));
  return { value: problems.length === 0 ? (read as RecordOf<K>) : null, problems: byProperty(problems) };
}

function judge<K extends RecordKind>(kind: K, value: RecordOf<K>, around: Around, fresh: boolean): Problem[] {
  const shape = recordSchemas[kind].safeParse(value);
  if (!shape.success) {
    return shape.error.issues.map(({ path, message }) => {
      const fault = shapeFault(kind, String(path[0]));
      return {
        where: { column: path.map(String).join('.') },
        got: String((value as Record<string, unknown>)[String(path[0])] ?? recordWords.emptyHere),
        expected: message.replace(/^Invalid input: expected |^expected /, ''),
        fix: recordWords.fillIn,
        ...(fault && { fault }),
      };
    });
  }
  const same = (other: unknown) => JSON.stringify(keyValues(kind, other)) === JSON.stringify(keyValues(kind, value));
  const others = (around as Partial<Program>)[kind]?.filter((other) => fresh || !same(other)) ?? [];
  const program = { ...emptyProgram(), ...around, [kind]: [...others, value] } as Program;
  // Without signal the list may not be here: what is not known cannot contradict, and the server judges what arrives.
  const isKnown = (list: 'fields' | 'traps') => (around[list]?.length ?? 0) > 0;
  return checkProgram(program, { words: catalogueWords }).filter(
    ({ fault }) => fault?.kind !== 'unknown-reference' || isKnown(fault.to),
  );
}

const keyValues = (kind: RecordKind, value: unknown) =>
  tables[kind].primaryKey.map((name) => (value as Record<string, unknown>)[keyOf(name)]);

/** A problem of several columns stands beside the first. */
function byProperty(problems: readonly Problem[]): Map<string, Problem[]> {
  const found = new Map<string, Problem[]>();
  for (const problem of problems) {
    const key = keyOf(problem.where.column?.split(', ')[0] ?? '');
    found.set(key, [...(found.get(key) ?? []), problem]);
  }
  return found;
}
