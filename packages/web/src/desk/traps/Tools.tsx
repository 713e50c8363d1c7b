import type { StationsView } from '@duskwatch/core';
import { useState } from 'react';
import { copyText } from '../../browser/clipboard.ts';
import { dueText, rateOf, visitText } from '../../shared/traps/words.ts';
import { localName } from '../../text/names.ts';
import { stationsWords as w } from '../../text/stations.ts';
import { useWording } from '../../text/wording.ts';
import { useWide } from '../../ui/media.ts';
import { allRows, asCsv, csvCells, type Row } from './rows.ts';
import { COLUMNS, STATES, type StationsSearch } from './search.ts';

export function Tools(props: {
  view: StationsView;
  rows: readonly Row[];
  all: number;
  search: StationsSearch;
  change: (part: Partial<StationsSearch>) => void;
}) {
  const { view, rows, all, search, change } = props;
  const wide = useWide();
  const traps = allRows(view).map(({ trap }) => trap);
  const insects = new Map(traps.map(({ insect }) => [insect.id, localName(insect.commonName)]));
  const farms = [...new Set(traps.flatMap(({ informs }) => informs.map(({ farm }) => farm)))].sort();
  return (
    <div className="trap-tools">
      <div className="filters">
        <label>
          <span>{w.filter.search}</span>
          <input
            type="search"
            value={search.find ?? ''}
            placeholder={w.filter.searchHint}
            onChange={(event) => change({ find: event.currentTarget.value || undefined })}
          />
        </label>
        <label>
          <span>{w.filter.state}</span>
          <select
            value={search.state ?? 'hanging'}
            onChange={(event) => change({ state: STATES.find((state) => state === event.currentTarget.value) })}
          >
            {STATES.map((state) => (
              <option key={state} value={state}>
                {w.filter.states[state]}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{w.filter.insect}</span>
          <select value={search.insect ?? ''} onChange={(event) => change({ insect: event.currentTarget.value || undefined })}>
            <option value="">{w.filter.allInsects}</option>
            {[...insects].map(([id, name]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>{w.filter.farm}</span>
          <select value={search.farm ?? ''} onChange={(event) => change({ farm: event.currentTarget.value || undefined })}>
            <option value="">{w.filter.allFarms}</option>
            {farms.map((farm) => (
              <option key={farm}>{farm}</option>
            ))}
          </select>
        </label>
        {!wide && (
          <label>
            <span>{w.filter.sort}</span>
            <select
              value={search.sort ?? 'station'}
              onChange={(event) => change({ sort: COLUMNS.find((column) => column === event.currentTarget.value) })}
            >
              {COLUMNS.map((column) => (
                <option key={column} value={column}>
                  {w.columns[column]}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <div className="actions">
        <span className="shown">{w.filter.shown(rows.length, all)}</span>
        <Exports view={view} rows={rows} />
      </div>
    </div>
  );
}

const CSV_COLUMNS = [
  'station',
  'trap',
  'insect',
  'design',
  'informs',
  'hungOn',
  'takenDownOn',
  'lastCheck',
  'count',
  'condition',
  'rate',
  'due',
  'lurePlaced',
  'lureLife',
  'latitude',
  'longitude',
] as const satisfies readonly (keyof typeof w.csv)[];

function Exports({ view, rows }: { view: StationsView; rows: readonly Row[] }) {
  const [said, say] = useState('');
  const wording = useWording();
  const csv = () =>
    asCsv(
      CSV_COLUMNS.map((column) => w.csv[column]),
      rows.map(csvCells),
    );
  const text = () =>
    rows
      .map(({ place, trap }) =>
        [
          `${place.station}, ${trap.trapId}: ${localName(trap.insect.commonName)}, ${wording.design[trap.design]}`,
          visitText(trap, view.on, wording.condition),
          rateOf(trap),
          dueText(trap, view.on),
        ].join('; '),
      )
      .join('\n');
  const copy = async (what: string) => say((await copyText(what)) ? w.copied : w.copyFailed);
  const save = () => {
    const url = URL.createObjectURL(new Blob([csv()], { type: 'text/csv' }));
    const link = document.createElement('a');
    link.href = url;
    link.download = `${w.file}-${view.on}.csv`;
    link.click();
    URL.revokeObjectURL(url);
  };
  return (
    <>
      <button type="button" className="button" onClick={() => void copy(text())}>
        {w.copyText}
      </button>
      <button type="button" className="button" onClick={() => void copy(csv())}>
        {w.copyCsv}
      </button>
      <button type="button" className="button" onClick={save}>
        {w.saveCsv}
      </button>
      <output className="said">{said}</output>
    </>
  );
}
