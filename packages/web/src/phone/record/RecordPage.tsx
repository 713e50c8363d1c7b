import type { OwnField } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { rememberedText } from '../../browser/remembered-text.ts';
import { ownFieldsQuery } from '../../shared/advice/own-fields.ts';
import { useDesk } from '../../shared/record/desk.ts';
import { RECORDED } from '../../shared/record/kinds.ts';
import { Recording } from '../../shared/record/Recording.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { cropText } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { recordPageWords as w } from '../../text/record-page.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import type { RecordSearch } from './search.ts';

const lastField = rememberedText('duskwatch.record-field');

/** What a grower writes down: the field first, the one of last time to begin with, then what happened there. */
export function RecordPage() {
  const { field: asked, what } = useSearch({ from: '/record' });
  const navigate = useNavigate();
  const { data: view, error, refetch } = useQuery(ownFieldsQuery(undefined));
  const mayWrite = useMayWrite();
  useTitle(w.title);
  if (error && !view) return <Failure error={error} again={refetch} />;
  const fields = view ? [...view.acting, ...view.resting] : [];
  const wished = asked ?? lastField.read();
  const field = fields.find(({ fieldId }) => fieldId === wished) ?? fields[0];
  const go = (search: RecordSearch) => void navigate({ to: '/record', search, replace: true });
  return (
    <main className="page record-page" id="page" aria-busy={!view}>
      <h1>{w.title}</h1>
      {!view && <p>{w.reading}</p>}
      {view && !field && <p>{w.none}</p>}
      {view && field && (
        <>
          <Choice
            fields={fields}
            chosen={field}
            choose={(fieldId) => {
              lastField.write(fieldId);
              go({ field: fieldId });
            }}
          />
          <ul className="record-rows">
            {RECORDED.filter(mayWrite).map((kind) => (
              <li key={kind}>
                <button type="button" onClick={() => go({ field: field.fieldId, what: kind })}>
                  <b>{w.kinds[kind].name}</b>
                  <span>{w.kinds[kind].means}</span>
                </button>
              </li>
            ))}
          </ul>
          <Waits />
          {what && (
            <Recording kind={what} field={field} on={view.on} lead={field.lead} close={() => go({ field: field.fieldId })} />
          )}
        </>
      )}
    </main>
  );
}

function Choice(props: { fields: readonly OwnField[]; chosen: OwnField; choose: (fieldId: string) => void }) {
  const { fields, chosen, choose } = props;
  return (
    <label className="record-field">
      <span>{w.field}</span>
      <select value={chosen.fieldId} onChange={({ currentTarget }) => choose(currentTarget.value)}>
        {fields.map((field) => (
          <option key={field.fieldId} value={field.fieldId}>
            {field.name}, {cropText(field)}
          </option>
        ))}
      </select>
    </label>
  );
}

function Waits() {
  const waits = useDesk().status?.pending ?? 0;
  return (
    <p className="hint" role="status">
      {waits > 0 ? <span className="not-sent">{recordWords.unsent(waits)}</span> : w.kept}
    </p>
  );
}
