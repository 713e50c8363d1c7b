import type { TrapsView } from '@duskwatch/core';
import { dueText, rateOf, visitText } from '../../shared/traps/words.ts';
import { localName } from '../../text/names.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { useWording } from '../../text/wording.ts';
import { Field, SelectField } from '../../ui/Field.tsx';
import { useWide } from '../../ui/media.ts';
import { asCsv } from '../../ui/table/cells.ts';
import { TakeAlong } from '../../ui/table/TakeAlong.tsx';
import { allRows, csvCells, type Row } from './rows.ts';
import { COLUMNS, STATES, type StationsSearch } from './search.ts';

export function Tools(props: {
  view: TrapsView;
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
        <Field label={w.filter.search} className="small">
          {(box) => (
            <input
              {...box}
              type="search"
              value={search.find ?? ''}
              placeholder={w.filter.searchHint}
              onChange={(event) => change({ find: event.currentTarget.value || undefined })}
            />
          )}
        </Field>
        <SelectField
          label={w.filter.state}
          value={search.state ?? 'hanging'}
          choices={STATES.map((state) => [state, w.filter.states[state]])}
          choose={(value) => change({ state: STATES.find((state) => state === value) })}
        />
        <SelectField
          label={w.filter.insect}
          value={search.insect ?? ''}
          all={w.filter.allInsects}
          choices={[...insects]}
          choose={(value) => change({ insect: value || undefined })}
        />
        <SelectField
          label={w.filter.farm}
          value={search.farm ?? ''}
          all={w.filter.allFarms}
          choices={farms.map((farm) => [farm, farm])}
          choose={(value) => change({ farm: value || undefined })}
        />
        {!wide && (
          <SelectField
            label={w.filter.sort}
            value={search.sort ?? 'station'}
            choices={COLUMNS.map((column) => [column, w.columns[column]])}
            choose={(value) => change({ sort: COLUMNS.find((column) => column === value) })}
          />
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

function Exports({ view, rows }: { view: TrapsView; rows: readonly Row[] }) {
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
  return <TakeAlong label={`${w.title}, ${view.on}`} text={text} csv={csv} className="button" />;
}
