/**
 * Rows by the value of a key, both in the order met. As `Map.groupBy`, which not every Node that Duskwatch runs on has.
 */
export const groupBy = <T, K>(rows: Iterable<T>, key: (row: T) => K): Map<K, T[]> => groupByEach(rows, (row) => [key(row)]);

/** Rows by each of several keys, or none, that a row belongs under; both in the order met. */
export function groupByEach<T, K>(rows: Iterable<T>, keys: (row: T) => readonly K[]): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const row of rows) {
    for (const key of keys(row)) {
      const group = groups.get(key);
      if (group) group.push(row);
      else groups.set(key, [row]);
    }
  }
  return groups;
}
