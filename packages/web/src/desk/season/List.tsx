import { asCsv, asText, type CellValue } from '../../ui/table/cells.ts';
import { TakeAlong } from '../../ui/table/TakeAlong.tsx';

/** A list that no one table of the page shows, to take along. */
export function List(props: { name: string; head: readonly string[]; rows: readonly (readonly CellValue[])[] }) {
  const { name, head, rows } = props;
  return (
    <p className="actions no-print">
      <TakeAlong label={name} text={() => asText(rows)} csv={() => asCsv(head, rows)} className="button" />
    </p>
  );
}
