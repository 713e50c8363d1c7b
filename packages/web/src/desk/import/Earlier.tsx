import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ApiError, send } from '../../api/client.ts';
import { dayText } from '../../format/day.ts';
import { localDay } from '../../format/local-day.ts';
import { problemText } from '../../shared/record/ProblemText.tsx';
import { sheetWords, importWords as w } from '../../text/import.ts';
import { Table } from '../../ui/table/Table.tsx';
import { toast } from '../../ui/toast.ts';
import type { KeptImport } from './queries.ts';

/** What files brought before, each to be taken back whole. */
export function Earlier({ imports }: { imports: readonly KeptImport[] }) {
  const queries = useQueryClient();
  const [busy, setBusy] = useState<string | null>(null);
  const undo = async ({ importId }: KeptImport) => {
    setBusy(importId);
    try {
      const { undone } = await send<{ undone: number }>('POST', `/api/imports/${importId}/undo`, {});
      toast(w.earlier.taken(undone));
      await queries.invalidateQueries();
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      toast(error.problems.map(problemText).slice(0, 3).join(' '), { lasting: true });
    } finally {
      setBusy(null);
    }
  };
  const columns = w.earlier.columns;
  return (
    <section aria-label={w.earlier.title} className="import-earlier">
      <h2>{w.earlier.title}</h2>
      {imports.length === 0 ? (
        <p>{w.earlier.none}</p>
      ) : (
        <Table
          label={w.earlier.title}
          rows={imports}
          keyOf={({ importId }) => importId}
          columns={[
            { head: columns.file, value: ({ file }) => file, names: true },
            { head: columns.at, value: ({ at }) => at, said: ({ at }) => dayText(localDay(at)) },
            { head: columns.who, value: ({ authorName }) => authorName },
            {
              head: columns.what,
              value: ({ reading, added }) => (reading === null ? String(added) : sheetWords.reading(reading)),
            },
            {
              head: columns.acts,
              cell: (kept) =>
                kept.undone === null ? (
                  <button
                    type="button"
                    className="plain-button"
                    aria-label={w.earlier.undoOf(kept.file)}
                    disabled={busy !== null}
                    onClick={() => void undo(kept)}
                  >
                    {w.undo}
                  </button>
                ) : (
                  w.earlier.undone(kept.undone.authorName, dayText(localDay(kept.undone.at)))
                ),
            },
          ]}
        />
      )}
    </section>
  );
}
