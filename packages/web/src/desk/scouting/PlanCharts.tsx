import { countsInsects, type PlanCurves, type ScoutingPlan, stopLines } from '@duskwatch/core';
import { useMemo } from 'react';
import { scoutingWords } from '../../text/scouting.ts';
import { planWords } from '../../text/walk.ts';
import { fineNumber } from './figures.ts';
import { Numbers } from './Numbers.tsx';
import { PlanChart, type Series } from './PlanChart.tsx';

/** Every so many rows of the long tables are shown. */
const ROWS = 25;

export function PlanCharts({ plan, curves }: { plan: ScoutingPlan; curves: PlanCurves }) {
  const w = scoutingWords.charts;
  const lines = useMemo(() => stopLines(plan), [plan]);
  const unit = planWords.unitName(plan.unit);
  const levelName = countsInsects(plan) ? w.trueMasses(unit) : w.trueLevel(unit);
  const { m0, m1 } = plan.test;
  const marks = [
    { at: 100 * m0, name: w.lower },
    { at: 100 * plan.threshold, name: w.figure },
    { at: 100 * m1, name: w.upper },
  ];
  const levelMost = 100 * curves.curve.at(-1)!.mean;
  const share = (name: string, dash: string, of: (at: PlanCurves['curve'][number]) => number, named: number): Series => ({
    name,
    dash,
    named,
    points: curves.curve.map((at) => [100 * at.mean, 100 * of(at)] as const),
  });
  const below = lines.flatMap((each) => (each.below === null ? [] : [[each.samples, each.below] as const]));
  const above = lines.flatMap((each) => (each.above === null ? [] : [[each.samples, each.above] as const]));
  const foundMost = Math.max(1, ...above.map(([, total]) => total)) * 1.15;
  const whole = fineNumber;
  const everyNth = Math.max(1, Math.ceil(lines.length / ROWS));
  const levels = [curves.atM0, curves.atThreshold, curves.atM1, ...curves.curve.filter((_, i) => i % 6 === 0)];
  const sorted = [...new Map(levels.map((at) => [at.mean, at])).values()].sort((a, b) => a.mean - b.mean);
  return (
    <div className="plan-charts">
      <section>
        <PlanChart
          title={w.stop}
          text={w.stopText}
          xName={w.units}
          yName={w.found}
          xMost={plan.maxSamples}
          yMost={foundMost}
          marks={[]}
          series={[
            { name: w.above, dash: '', points: above, named: Math.floor(above.length * 0.3) },
            { name: w.below, dash: '6 4', points: below, named: Math.floor(below.length * 0.45) },
          ]}
        />
        <Numbers
          title={w.numbers}
          of={w.stop}
          columns={[w.units, w.below, w.above]}
          rows={lines
            .filter((_, i) => i % everyNth === 0 || i === lines.length - 1)
            .map(({ samples, below: low, above: high }) => [
              String(samples),
              low === null ? '–' : low === 0 ? '0' : `0–${low}`,
              high === null ? '–' : `${high}+`,
            ])}
        />
      </section>
      <section>
        <PlanChart
          title={w.oc}
          text={w.ocText}
          xName={levelName}
          yName={w.chance}
          xMost={levelMost}
          yMost={100}
          marks={marks}
          series={[
            share(w.below, '6 4', (at) => at.below, 6),
            share(w.above, '', (at) => at.above, 38),
            share(w.undecided, '2 3', (at) => at.undecided, 22),
          ]}
        />
        <Numbers
          title={w.numbers}
          of={w.oc}
          columns={[w.level, w.below, w.above, w.undecided]}
          rows={sorted.map((at) => [
            whole(100 * at.mean),
            whole(100 * at.below),
            whole(100 * at.above),
            whole(100 * at.undecided),
          ])}
        />
      </section>
      <section>
        <PlanChart
          title={w.asn}
          text={w.asnText}
          xName={levelName}
          yName={w.average}
          xMost={levelMost}
          yMost={Math.max(...curves.curve.map((at) => at.averageSamples)) * 1.15}
          marks={marks}
          series={[
            {
              name: '',
              dash: '',
              named: 0,
              points: curves.curve.map((at) => [100 * at.mean, at.averageSamples] as const),
            },
          ]}
        />
        <Numbers
          title={w.numbers}
          of={w.asn}
          columns={[w.level, w.average]}
          rows={sorted.map((at) => [whole(100 * at.mean), whole(at.averageSamples)])}
        />
      </section>
    </div>
  );
}
