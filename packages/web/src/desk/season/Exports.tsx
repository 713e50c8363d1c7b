import { useState } from 'react';
import { copyText } from '../../browser/clipboard.ts';
import { seasonWords as w } from '../../text/season.ts';

export type Cell = string | number | null;

const quoted = (cell: Cell): string => {
  const text = cell === null ? '' : String(cell);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** Plain numbers and ISO days: a spreadsheet reads them in any language. */
export const asCsv = (head: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [head, ...rows].map((cells) => cells.map(quoted).join(',')).join('\n');

/** A list to paste into a message or a spreadsheet. */
export function Exports({ name, head, rows }: { name: string; head: readonly string[]; rows: readonly (readonly Cell[])[] }) {
  const [said, say] = useState('');
  const copy = async (text: string) => say((await copyText(text)) ? w.copied : w.copyFailed);
  const text = () => rows.map((cells) => cells.filter((cell) => cell !== null && cell !== '').join('; ')).join('\n');
  const save = () => {
    const url = URL.createObjectURL(new Blob([asCsv(head, rows)], { type: 'text/csv' }));
    const link = document.createElement('a');
    link.href = url;
    link.download = `${w.file}-${name}.csv`;
    link.click();
    URL.revokeObjectURL(url);
  };
  return (
    <p className="actions exports no-print">
      <button type="button" className="button" onClick={() => void copy(text())}>
        {w.copyText}
      </button>
      <button type="button" className="button" onClick={() => void copy(asCsv(head, rows))}>
        {w.copyCsv}
      </button>
      <button type="button" className="button" onClick={save}>
        {w.saveCsv}
      </button>
      <output className="said">{said}</output>
    </p>
  );
}
