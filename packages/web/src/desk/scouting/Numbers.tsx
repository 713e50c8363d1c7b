import { FoldedTable } from '../../ui/table/FoldedTable.tsx';

type Row = readonly (string | number)[];

/** The numbers behind a drawing: figures in every column, in the order of the first. */
export function Numbers(props: { title: string; of: string; columns: readonly string[]; rows: readonly Row[] }) {
  return (
    <FoldedTable
      title={props.title}
      of={props.of}
      fixed
      rows={props.rows}
      keyOf={(row) => row.join('|')}
      columns={props.columns.map((head, place) => ({ head, value: (row: Row) => row[place]!, number: true }))}
    />
  );
}
