import { type CheckRecord, type Column, cellText, type RecordKind, type RecordOf, tables } from '@duskwatch/core';
import { writeRows } from '../csv/write-rows.ts';

/** Columns that a file of these records has: extensions only where some record uses them. */
export function writtenColumns<K extends RecordKind>(kind: K, records: readonly RecordOf<K>[]): Column[] {
  const uses = ({ key }: Column) => records.some((record) => ((record as Record<string, unknown>)[key] ?? null) !== null);
  return tables[kind].columns.filter((column) => !column.extension || uses(column));
}

/** The table as text that `readTable` reads back as the same records. */
export function writeTable<K extends RecordKind>(kind: K, records: readonly RecordOf<K>[]): string {
  const columns = writtenColumns(kind, records);
  const ordered = kind === 'checks' ? inVisitOrder(records as readonly CheckRecord[]) : records;
  const cells = (record: object) => columns.map((column) => cellText(column, (record as Record<string, unknown>)[column.key]));
  return writeRows([columns.map((column) => column.name), ...ordered.map(cells)]);
}

/** Rows of one trap and day stand in the order of their visits, from which reading numbers them again. */
function inVisitOrder(checks: readonly CheckRecord[]): readonly CheckRecord[] {
  if (checks.every((check) => check.visit === 1)) return checks;
  const places = new Map<string, number[]>();
  checks.forEach((check, index) => {
    const key = `${check.trapId}|${check.checkedOn}`;
    places.set(key, [...(places.get(key) ?? []), index]);
  });
  const ordered = [...checks];
  for (const indexes of places.values()) {
    const visits = indexes.map((index) => checks[index]!).sort((a, b) => a.visit - b.visit);
    indexes.forEach((index, nth) => {
      ordered[index] = visits[nth]!;
    });
  }
  return ordered;
}
