/** Rows by the value of a key, both in the order met. */
export const groupBy = <T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> =>
  groupByEach(rows, (row) => [key(row)]);

/** Rows by each of several keys, or none, that a row belongs under; both in the order met. */
export function groupByEach<T>(rows: readonly T[], keys: (row: T) => readonly string[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    for (const key of keys(row)) {
      const group = groups.get(key);
      if (group) group.push(row);
      else groups.set(key, [row]);
    }
  }
  return groups;
}
