import { readTravelTable, type TravelTable } from '@duskwatch/core';
import { useState } from 'react';
import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';
import { Field, RadioField } from '../../ui/Field.tsx';

export type Travel =
  | { readonly kind: 'circle' }
  | { readonly kind: 'table'; readonly table: TravelTable | null }
  | { readonly kind: 'service' };

/** How long it takes from one station to the next: reckoned, written down, or asked of a service that learns the places. */
export function TravelChoice({
  travel,
  choose,
  service,
}: {
  travel: Travel;
  choose: (travel: Travel) => void;
  service: string | null;
}) {
  const [faults, tell] = useState<readonly string[]>([]);
  const read = async (file: File | undefined) => {
    if (!file) return;
    const table = readTravelTable(await file.text());
    tell(
      table.ok
        ? []
        : table.problems.map(({ where, got, expected }) => `${where.row ?? ''} ${where.column ?? ''}: ${got} → ${expected}`),
    );
    choose({ kind: 'table', table: table.ok ? table.value : null });
  };
  return (
    <RadioField<Travel['kind']>
      label={w.travel}
      className="rounds-travel"
      options={[
        ['circle', w.circle],
        ['table', w.table],
        ...(service === null ? [] : [['service', w.service(service)] as const]),
      ]}
      value={travel.kind}
      choose={(kind) => choose(kind === 'table' ? { kind, table: null } : { kind })}
    >
      {travel.kind === 'table' && (
        <div className="rounds-file">
          <Field label={w.file} hint={w.tableNote} faults={faults}>
            {(box) => (
              <input
                {...box}
                type="file"
                accept=".csv,text/csv,text/plain"
                onChange={(event) => void read(event.currentTarget.files?.[0])}
              />
            )}
          </Field>
          <p role="status">{travel.table && w.fileRead(travel.table.ids.length)}</p>
        </div>
      )}
      {travel.kind === 'service' && service !== null && <p className="key">{w.serviceNote(service)}</p>}
    </RadioField>
  );
}
