import type { ReactNode } from 'react';

export interface Column {
  readonly head: string;
  readonly number?: boolean;
}

/** A table behind a chart, folded away until it is asked for. */
export function Folded(props: {
  title: string;
  of: string;
  note?: string;
  columns: readonly Column[];
  rows: readonly (readonly ReactNode[])[];
}) {
  const { title, note, columns, rows } = props;
  return (
    <details className="behind">
      <summary>{title}</summary>
      {note && <p className="basis">{note}</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={`${title}, ${props.of}`} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              {columns.map((column) => (
                <th scope="col" key={column.head} className={column.number ? 'number' : undefined}>
                  {column.head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows carry no state and two may be alike
              <tr key={index}>
                {row.map((value, place) => (
                  <td key={columns[place]!.head} className={columns[place]!.number ? 'number' : undefined}>
                    {value}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
