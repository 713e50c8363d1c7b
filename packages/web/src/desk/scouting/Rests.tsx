import type { ScoutingPlan } from '@duskwatch/core';
import { localName } from '../../text/names.ts';
import { scoutingWords } from '../../text/scouting.ts';
import { useWording } from '../../text/wording.ts';
import { Table } from '../../ui/table/Table.tsx';
import { fineNumber } from './figures.ts';

/** The figures that neither the rule nor the reader gave. */
export function Rests({ plan }: { plan: ScoutingPlan }) {
  const w = scoutingWords.plan;
  const wording = useWording();
  const c = w.restsColumns;
  return (
    <div className="plan-rests">
      <h2>{w.rests(plan.assumed.length)}</h2>
      <Table
        label={w.rests(plan.assumed.length)}
        height="part"
        fixed
        rows={plan.assumed}
        keyOf={({ id }) => id}
        columns={[
          { head: c.value, value: ({ value }) => value, cell: ({ value }) => fineNumber(value), number: true },
          { head: c.unit, value: ({ unit }) => localName(unit) },
          { head: c.why, value: ({ why }) => localName(why) },
          { head: c.standing, value: ({ standing }) => wording.standing[standing] },
        ]}
      />
      <h3>{w.basis}</h3>
      <p className="key">{w.method}</p>
    </div>
  );
}
