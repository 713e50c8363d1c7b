/** The numbers behind a drawing, folded away. */
export function Numbers(props: { title: string; of: string; columns: readonly string[]; rows: readonly (readonly string[])[] }) {
  const { title, of, columns, rows } = props;
  return (
    <details className="behind">
      <summary>{title}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={`${title}, ${of}`} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              {columns.map((column) => (
                <th scope="col" key={column} className="number">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.join('|')}>
                {row.map((value, place) => (
                  <td key={columns[place]} className="number">
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
