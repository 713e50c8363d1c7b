import { lazy, Suspense, useState } from 'react';
import { copyText } from '../../browser/clipboard.ts';
import { saveFile } from '../../browser/save.ts';
import { tableWords as w } from '../../text/table.ts';
import { fileName } from './cells.ts';

// Few open it, and every page with a table would wait for it.
const Menu = lazy(async () => ({ default: (await import('../Menu.tsx')).Menu }));

/** A table or a list, to paste into a message or a spreadsheet, or to keep as a file. */
export function TakeAlong(props: {
  /** Which one, for whoever does not see it: names the file as well. */
  label: string;
  text: () => string;
  csv: () => string;
  className?: string;
}) {
  const { label, text, csv, className = 'plain-button' } = props;
  const [said, say] = useState('');
  const copy = async (what: string) => say((await copyText(what)) ? w.copied : w.copyFailed);
  // A byte order mark tells spreadsheets that the file is UTF-8.
  const save = () => saveFile(new Blob(['\uFEFF', csv()], { type: 'text/csv;charset=utf-8' }), `${fileName(label)}.csv`);
  return (
    <span className="take-along no-print">
      <Suspense
        fallback={
          <button type="button" className={`menu-button ${className}`} disabled>
            {w.take}
          </button>
        }
      >
        <Menu
          text={w.take}
          label={w.takeOf(label)}
          className={className}
          items={[
            { text: w.copyText, act: () => void copy(text()) },
            { text: w.copyCsv, act: () => void copy(csv()) },
            { text: w.saveCsv, act: save },
          ]}
        />
      </Suspense>
      <output className="said">{said}</output>
    </span>
  );
}
