import { RENAMED_KINDS, type RenamedKind } from '@duskwatch/core';
import { useQueryClient } from '@tanstack/react-query';
import { useLocation, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { ApiError, send } from '../../api/client.ts';
import type { StoredKind } from '../../sync/types.ts';
import { recordWords } from '../../text/record.ts';
import { renamingWords as w } from '../../text/renaming.ts';
import { Field } from '../../ui/Field.tsx';
import { toast } from '../../ui/toast.ts';
import { ProblemText } from './ProblemText.tsx';

export const canBeRenamed = (kind: StoredKind): kind is RenamedKind => (RENAMED_KINDS as readonly StoredKind[]).includes(kind);

/** Gives a field, a trap or a weather source another identifier, with all that names it; only the server can. */
export function RenameForm({ kind, id, close }: { kind: RenamedKind; id: string; close: () => void }) {
  const [text, write] = useState(id);
  const [refused, refuse] = useState<ApiError | null>(null);
  const [busy, setBusy] = useState(false);
  const queries = useQueryClient();
  const navigate = useNavigate();
  const here = useLocation({ select: ({ pathname }) => pathname });
  const rename = async () => {
    setBusy(true);
    try {
      const { renamed } = await send<{ renamed: number }>('POST', '/api/renaming', { kind, from: id, to: text });
      toast(w.saved(renamed));
      // A page of its own stands at another address now.
      const [params, at] = [{ fieldId: text.trim(), trapId: text.trim() }, `/${encodeURIComponent(id)}`];
      if (kind === 'fields' && here.endsWith(at)) await navigate({ to: '/fields/$fieldId', params, replace: true });
      if (kind === 'traps' && here.endsWith(at)) await navigate({ to: '/traps/$trapId', params, replace: true });
      await queries.invalidateQueries();
      close();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      refuse(error);
      setBusy(false);
    }
  };
  return (
    <form
      className="record-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) void rename();
      }}
    >
      <div className="record-boxes">
        <p>{w.text}</p>
        {kind === 'traps' && <p>{w.labels}</p>}
        <Field
          label={w.label}
          faults={refused?.problems.map((problem) => <ProblemText key={problem.expected} problem={problem} />) ?? []}
        >
          {(box) => <input {...box} type="text" value={text} autoComplete="off" onChange={({ target }) => write(target.value)} />}
        </Field>
      </div>
      <footer className="record-foot">
        <button type="submit" className="button primary" aria-disabled={busy}>
          {w.save}
        </button>
        <button type="button" className="plain-button" onClick={close}>
          {recordWords.cancel}
        </button>
      </footer>
    </form>
  );
}
