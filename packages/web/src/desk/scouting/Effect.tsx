import { planCurves, type ScoutingPlan } from '@duskwatch/core';
import { useMemo } from 'react';
import { scoutingWords } from '../../text/scouting.ts';
import { fineNumber } from './figures.ts';

/** What limits and risks set by hand cost, and what they buy. */
export function Effect({ usual, set }: { usual: ScoutingPlan; set: ScoutingPlan }) {
  const w = scoutingWords.plan;
  const [before, after] = useMemo(() => [usual, set].map(summaryOf), [usual, set]);
  return (
    <section className="plan-effect" aria-labelledby="effect">
      <h2 id="effect">{w.effect}</h2>
      <table className="figures">
        <thead>
          <tr>
            <td />
            <th scope="col" className="number">
              {w.asItComes}
            </th>
            <th scope="col" className="number">
              {w.asSet}
            </th>
          </tr>
        </thead>
        <tbody>
          {(Object.keys(w.rows) as (keyof typeof w.rows)[]).map((row) => (
            <tr key={row}>
              <th scope="row">{w.rows[row]}</th>
              <td className="number">{fineNumber(before![row])}</td>
              <td className="number">{fineNumber(after![row])}</td>
            </tr>
          ))}
        </tbody>
      </table>
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
