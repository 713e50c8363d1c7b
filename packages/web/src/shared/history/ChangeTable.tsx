import type { StoredKind } from '../../sync/types.ts';
import { historyWords } from '../../text/history.ts';
import { Table } from '../../ui/table/Table.tsx';
import { type Names, propertyLabel, propertyText } from '../record/naming.ts';
import type { PropertyChange } from './versions.ts';

/** What was before, and after: one property to a row. */
export function ChangeTable(props: {
  kind: StoredKind;
  changes: readonly PropertyChange[];
  before: object | null;
  after: object | null;
  names: Names;
  heads?: { readonly before: string; readonly after: string };
}) {
  const { kind, changes, before, after, names } = props;
  const w = { ...historyWords.change, ...props.heads };
  return (
    <Table
      label={historyWords.change.caption}
      className="changes"
      fixed
      takeAlong={false}
      rows={changes}
      keyOf={({ property }) => property}
      columns={[
        { head: w.property, cell: ({ property }) => propertyLabel(kind, property), names: true },
        {
          head: w.before,
          cell: (change) => propertyText(kind, change.property, change.before, before, names),
          className: () => 'was',
        },
        { head: w.after, cell: (change) => propertyText(kind, change.property, change.after, after, names) },
      ]}
    />
  );
}
