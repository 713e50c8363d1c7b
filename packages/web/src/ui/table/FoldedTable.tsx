import { Folded } from '../Folded.tsx';
import { Table, type TableProps } from './Table.tsx';

/** The numbers behind a chart or a sentence, folded away until they are asked for. */
export function FoldedTable<R>(
  props: Omit<TableProps<R>, 'label' | 'height'> & {
    title: string;
    /** What it is about: tells it from the same table of something else. */
    of: string;
    note?: string;
  },
) {
  const { title, of, note, ...table } = props;
  return (
    <Folded title={title} {...(note ? { note } : {})}>
      <Table {...table} label={`${title}, ${of}`} height="part" />
    </Folded>
  );
}
