import type { Correction, SheetPicture } from '@duskwatch/exchange/sheet';
import { useState } from 'react';
import { importWords as w } from '../../text/import.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { BareTable } from '../../ui/table/BareTable.tsx';

type Correct = (correction: Correction) => void;

/** Rows that are pointed at: the first and the last. */
type Pointed = { readonly from: number; readonly to: number } | null;

/**
 * The beginning of a sheet, with what each cell was understood as: by its ground, by its letter, and in words.
 * @param correct null where pointing at rows could say nothing
 */
export function Picture({ picture, correct }: { picture: SheetPicture; correct: Correct | null }) {
  const { sheet, columns, rows, moreRows, moreColumns } = picture;
  const [pointed, point] = useState<Pointed>(null);
  const isPointed = (row: number) => pointed !== null && row >= pointed.from && row <= pointed.to;
  // The first row, then the last; a third begins anew.
  const pointAt = (row: number) =>
    point((before) =>
      before === null || before.from !== before.to || before.from === row
        ? before?.from === row && before.to === row
          ? null
          : { from: row, to: row }
        : { from: Math.min(before.from, row), to: Math.max(before.to, row) },
    );
  const readings = [...new Set(rows.flatMap(({ cells }) => cells.flatMap(({ as }) => as ?? [])))];
  return (
    <figure className="sheet-picture">
      <figcaption>
        {w.pictureOf(sheet)}
        <ul className="sheet-key">
          {readings.map((as) => (
            <li key={as} className={`as-${as}`}>
              {w.as[as]}
            </li>
          ))}
        </ul>
      </figcaption>
      <Scroll label={w.pictureOf(sheet)}>
        <BareTable caption={w.pictureOf(sheet)} className="sheet-cells">
          <thead>
            <tr>
              <td />
              {columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ row, cells }) => (
              <tr key={row} className={isPointed(row) ? 'pointed' : undefined}>
                <th scope="row">
                  {correct === null ? (
                    row
                  ) : (
                    <button
                      type="button"
                      className="row-pointer"
                      aria-label={w.point.at(row)}
                      aria-pressed={isPointed(row)}
                      onClick={() => pointAt(row)}
                    >
                      {row}
                    </button>
                  )}
                </th>
                {cells.map(({ text, as }, index) => (
                  <td
                    key={columns[index]}
                    className={as === null ? undefined : `as-${as}`}
                    title={as === null ? undefined : w.as[as]}
                  >
                    {text}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </BareTable>
      </Scroll>
      {correct && <Pointing pointed={pointed} sheet={sheet} correct={correct} clear={() => point(null)} />}
      {moreRows + moreColumns > 0 && <p className="key">{w.more(moreRows, moreColumns)}</p>}
    </figure>
  );
}

/** What can be said of the rows that are pointed at. */
function Pointing(props: { pointed: Pointed; sheet: string | null; correct: Correct; clear: () => void }) {
  const { pointed, sheet, correct, clear } = props;
  if (pointed === null) return <p className="key">{w.point.how}</p>;
  const say = (is: Correction['is']) => {
    clear();
    correct({ sheet, ...pointed, is });
  };
  return (
    <p className="import-pointing" role="status">
      {w.point.rows(pointed.from, pointed.to)}{' '}
      {(['totals', 'counts', 'farm-block'] as const).map((is) => (
        <button key={is} type="button" className="button" onClick={() => say(is)}>
          {w.point[is]}
        </button>
      ))}
    </p>
  );
}
