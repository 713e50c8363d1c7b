import { readTravelTable, type TravelTable } from '@duskwatch/core';
import { useState } from 'react';
import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';

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
  const kinds = [
    ['circle', w.circle],
    ['table', w.table],
    ...(service === null ? [] : [['service', w.service(service)] as const]),
  ] as const;
  return (
    <fieldset className="choices rounds-travel">
      <legend>{w.travel}</legend>
      {kinds.map(([kind, label]) => (
        <label key={kind}>
          <input
            type="radio"
            name="travel"
            checked={travel.kind === kind}
            onChange={() => choose(kind === 'table' ? { kind, table: null } : { kind })}
          />
          {label}
        </label>
      ))}
      {travel.kind === 'table' && (
        <div className="rounds-file">
          <label>
            <span>{w.file}</span>
            <input
              type="file"
              accept=".csv,text/csv,text/plain"
              onChange={(event) => void read(event.currentTarget.files?.[0])}
            />
          </label>
          <p className="key">{w.tableNote}</p>
          <p role="status">{travel.table && w.fileRead(travel.table.ids.length)}</p>
          {faults.length > 0 && (
            <ul className="faults">
              {faults.map((fault) => (
                <li key={fault}>{fault}</li>
              ))}
            </ul>
          )}
        </div>
      )}
      {travel.kind === 'service' && service !== null && <p className="key">{w.serviceNote(service)}</p>}
    </fieldset>
  );
}
