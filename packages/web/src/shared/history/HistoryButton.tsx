import { useState } from 'react';
import type { StoredKind } from '../../sync/types.ts';
import { historyWords } from '../../text/history.ts';
import { recordName } from '../record/naming.ts';
import { useAround } from '../record/useAround.ts';
import { HistoryPanel } from './HistoryPanel.tsx';

/** Opens the history of one record, from wherever the record is shown. */
export function HistoryButton({ kind, recordKey, text }: { kind: StoredKind; recordKey: string; text?: string }) {
  const [open, setOpen] = useState(false);
  const { names } = useAround();
  const label = historyWords.of(recordName(kind, recordKey, names));
  return (
    <>
      <button
        type="button"
        className={text ? 'button' : 'row-button'}
        aria-label={text ? undefined : label}
        aria-haspopup="dialog"
        onClick={() => setOpen(true)}
      >
        {text ?? historyWords.button}
      </button>
      {open && <HistoryPanel kind={kind} recordKey={recordKey} close={() => setOpen(false)} />}
    </>
  );
}
