import { plainHeader } from '@duskwatch/exchange';

/** The sign between the cells of a table's first line. */
export const delimiterIn = (line: string): string => /[,;\t]/.exec(line)?.[0] ?? ',';

/** The column names in the first line of a table, as they are compared: without quotes, case and spaces. */
export function headerOf(text: string): string[] {
  const line = text.slice(0, text.search(/\r|\n|$/));
  return line.split(delimiterIn(line)).map((cell) => plainHeader(cell.replaceAll('"', '')));
}
