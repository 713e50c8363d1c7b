import type { StoredKind } from '../../sync/types.ts';
import { historyWords } from '../../text/history.ts';
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
    <table className="figures changes">
      <thead>
        <tr>
          <th scope="col">{w.property}</th>
          <th scope="col">{w.before}</th>
          <th scope="col">{w.after}</th>
        </tr>
      </thead>
      <tbody>
        {changes.map((change) => (
          <tr key={change.property}>
            <th scope="row">{propertyLabel(kind, change.property)}</th>
            <td className="was">{propertyText(kind, change.property, change.before, before, names)}</td>
            <td>{propertyText(kind, change.property, change.after, after, names)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
