import type { SheetPicture } from '@duskwatch/exchange/sheet';
import { importWords as w } from '../../text/import.ts';
import { Scroll } from '../../ui/Scroll.tsx';
import { BareTable } from '../../ui/table/BareTable.tsx';

/** The beginning of a sheet, with what each cell was understood as: by its ground, by its letter, and in words. */
export function Picture({ picture }: { picture: SheetPicture }) {
  const { sheet, columns, rows, moreRows, moreColumns } = picture;
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
              <tr key={row}>
                <th scope="row">{row}</th>
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
      {moreRows + moreColumns > 0 && <p className="key">{w.more(moreRows, moreColumns)}</p>}
    </figure>
  );
}
