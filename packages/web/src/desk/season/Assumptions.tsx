import type { SeasonView } from '@duskwatch/core';
import { rateText } from '../../format/number.ts';
import { localName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { Cited } from '../../ui/Cited.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';

/** Every figure that nobody has published and the plan cannot do without. */
export function Assumptions({ view }: { view: SeasonView }) {
  const w = seasonWords.plan;
  return (
    <Folded title={w.sources}>
      <Table
        label={w.sources}
        className="season-assumptions"
        rows={view.assumptions}
        keyOf={({ id }) => id}
        columns={[
          { head: w.assumption, value: ({ why }) => localName(why), names: true },
          {
            head: w.value,
            said: ({ value, unit, written }) => `${rateText(written ?? value)} ${localName(unit)}`,
            cell: ({ value, unit, written }) => (
              <>
                {rateText(written ?? value)} {localName(unit)}
                {written !== null && <small>{w.written(rateText(written))}</small>}
              </>
            ),
          },
          {
            head: w.stands,
            said: ({ source }) => source,
            cell: ({ source, standing }) => <Cited source={source} standing={standing} />,
          },
        ]}
      />
    </Folded>
  );
}
