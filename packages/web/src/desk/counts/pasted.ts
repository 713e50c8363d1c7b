/** Counts copied out of a spreadsheet: read as a whole or not at all. */

/** What a cell may hold: up to six digits, as in the box itself. Empty: not counted. */
const COUNT = /^\d{0,6}$/;

export type PasteFault =
  /** The cell at this line of what was copied is no whole number. */
  | { readonly kind: 'no-count'; readonly line: number; readonly got: string }
  /** A line names a trap that is not on the sheet. */
  | { readonly kind: 'no-trap'; readonly line: number; readonly got: string }
  /** A trap stands in two lines. */
  | { readonly kind: 'twice'; readonly line: number; readonly got: string }
  /** More lines than the sheet has from here on. */
  | { readonly kind: 'too-long'; readonly lines: number; readonly room: number };

export type Pasted = { readonly counts: ReadonlyMap<string, string> } | { readonly faults: readonly PasteFault[] };

/**
 * Reads what was pasted into a box of the sheet. Lines that begin with a trap's label go to that trap, wherever it stands;
 * a column of figures alone fills the boxes from the one that it was pasted into downwards.
 * @param traps labels on the sheet that can be filled, in its order
 * @param from the trap whose box it was pasted into
 */
export function readPasted(text: string, traps: readonly string[], from: string): Pasted {
  const lines = text
    .replace(/\r\n?/g, '\n')
    .replace(/\n+$/, '')
    .split('\n')
    .map((line) => line.split('\t').map((cell) => cell.trim()));
  const labelled = new Map(traps.map((trap) => [trap.toLowerCase(), trap]));
  const byLabel = lines.some(([first, ...rest]) => rest.length > 0 && labelled.has(first!.toLowerCase()));
  const faults: PasteFault[] = [];
  const counts = new Map<string, string>();
  const put = (trap: string, count: string, line: number) => {
    if (!COUNT.test(count)) faults.push({ kind: 'no-count', line, got: count });
    else if (counts.has(trap)) faults.push({ kind: 'twice', line, got: trap });
    else counts.set(trap, count);
  };
  if (byLabel) {
    lines.forEach((cells, index) => {
      const trap = labelled.get(cells[0]!.toLowerCase());
      // The last cell of a line is the count, whatever stands between: station, insect, date.
      if (trap !== undefined) put(trap, cells.at(-1)!, index + 1);
      // A first line may name the columns.
      else if (cells.some((cell) => cell !== '') && !(index === 0 && !COUNT.test(cells.at(-1)!)))
        faults.push({ kind: 'no-trap', line: index + 1, got: cells[0]! });
    });
  } else {
    const rest = traps.slice(Math.max(0, traps.indexOf(from)));
    if (lines.length > rest.length) faults.push({ kind: 'too-long', lines: lines.length, room: rest.length });
    else
      lines.forEach((cells, index) => {
        if (cells.length > 1) faults.push({ kind: 'no-count', line: index + 1, got: cells.join(' ') });
        else put(rest[index]!, cells[0]!, index + 1);
      });
  }
  return faults.length > 0 ? { faults } : { counts };
}
