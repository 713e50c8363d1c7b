import { planCurves, type ScoutingPlan } from '@duskwatch/core';
import { useMemo } from 'react';
import { scoutingWords } from '../../text/scouting.ts';
import { Table } from '../../ui/table/Table.tsx';
import { fineNumber } from './figures.ts';

/** What limits and risks set by hand cost, and what they buy. */
export function Effect({ usual, set }: { usual: ScoutingPlan; set: ScoutingPlan }) {
  const w = scoutingWords.plan;
  const [before, after] = useMemo(() => [usual, set].map(summaryOf), [usual, set]);
  return (
    <section className="plan-effect" aria-labelledby="effect">
      <h2 id="effect">{w.effect}</h2>
      <Table
        label={w.effect}
        fixed
        rows={Object.keys(w.rows) as (keyof typeof w.rows)[]}
        keyOf={(row) => row}
        columns={[
          { head: w.effect, value: (row) => w.rows[row], names: true, unseen: true },
          { head: w.asItComes, value: (row) => before![row], cell: (row) => fineNumber(before![row]), number: true },
          { head: w.asSet, value: (row) => after![row], cell: (row) => fineNumber(after![row]), number: true },
        ]}
      />
      <p className="key">{w.onPhone}</p>
    </section>
  );
}

function summaryOf(plan: ScoutingPlan): Record<keyof typeof scoutingWords.plan.rows, number> {
  const { atM0, atThreshold, atM1 } = planCurves(plan, 2);
  return {
    least: plan.minSamples,
    most: plan.maxSamples,
    atM0: atM0.averageSamples,
    atThreshold: atThreshold.averageSamples,
    atM1: atM1.averageSamples,
    wrongAbove: 100 * atM0.above,
    wrongBelow: 100 * atM1.below,
    undecided: 100 * atThreshold.undecided,
  };
}
