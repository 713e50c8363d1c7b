/** Rows of one shape as a Markdown table; the first row names the columns. Columns of figures stand to the right. */
export function markdownTable(rows) {
  const columns = Object.keys(rows[0]);
  const isFigure = (column) => rows.every((row) => typeof row[column] === 'number' || /^[−–\-+]?[\d.]*( %)?$/.test(row[column]));
  const line = (cells) => `| ${cells.join(' | ')} |`;
  return [
    line(columns),
    `|${columns.map((column) => (isFigure(column) ? '--:' : '---')).join('|')}|`,
    ...rows.map((row) => line(columns.map((column) => row[column]))),
  ].join('\n');
}

export const percent = (part, whole) => (whole === 0 ? '–' : `${Math.round((100 * part) / whole)} %`);
