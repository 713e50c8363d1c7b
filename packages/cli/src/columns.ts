/** Rows of cells as aligned text; the last column runs as long as it likes. Widths count characters. */
export function alignColumns(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = [];
  for (const row of rows) for (const [at, cell] of row.entries()) widths[at] = Math.max(widths[at] ?? 0, cell.length);
  return rows.map((row) =>
    row
      .map((cell, at) => (at === row.length - 1 ? cell : cell.padEnd(widths[at]!)))
      .join('  ')
      .trimEnd(),
  );
}
