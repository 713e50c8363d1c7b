import { countsInsects, type ScoutingPlan } from '@duskwatch/core';
import { scoutingWords } from '../../text/scouting.ts';
import { planWords } from '../../text/walk.ts';
import { Field } from '../../ui/Field.tsx';
import { LIMITS, type Limit, type PlanSearch } from './search.ts';

interface Props {
  /** The plan as it comes. */
  readonly plan: ScoutingPlan;
  readonly search: PlanSearch;
  readonly change: (part: Partial<PlanSearch>) => void;
}

/** Shares and risks are set in percent, and means per hundred units. */
const scaleOf = (limit: Limit) => (limit === 'k' || limit === 'correlation' ? 1 : 100);

export function LimitsForm({ plan, search, change }: Props) {
  const w = scoutingWords.plan;
  const unit = planWords.unitName(plan.unit);
  const masses = countsInsects(plan);
  const { test } = plan;
  const names: Record<Limit, string> = {
    m0: masses ? w.m0Count(unit) : w.m0(unit),
    m1: masses ? w.m1Count(unit) : w.m1(unit),
    alpha: w.alpha,
    beta: w.beta,
    correlation: w.correlation,
    k: w.k,
  };
  const usual: Record<Limit, number> = {
    m0: test.m0,
    m1: test.m1,
    alpha: test.alpha,
    beta: test.beta,
    correlation: plan.correlation,
    k: test.distribution.kind === 'negative-binomial' ? test.distribution.k : 1,
  };
  const shown = LIMITS.filter((limit) => limit !== 'k' || masses);
  const changed = shown.some((limit) => search[limit] !== undefined);
  return (
    <section className="plan-limits" aria-labelledby="limits">
      <h2 id="limits">{w.limits}</h2>
      <p className="key">{w.limitsHelp}</p>
      <div className="plan-boxes">
        {shown.map((limit) => (
          <Field key={limit} label={names[limit]} className="plan-box">
            {(box) => (
              <input
                {...box}
                type="number"
                min={0}
                step="any"
                key={search[limit] ?? 'usual'}
                defaultValue={tidy((search[limit] ?? usual[limit]) * scaleOf(limit))}
                onBlur={(event) => set(limit, event.currentTarget.value)}
                onKeyDown={(event) => event.key === 'Enter' && set(limit, event.currentTarget.value)}
              />
            )}
          </Field>
        ))}
      </div>
      {changed && (
        <button
          type="button"
          className="button"
          onClick={() =>
            change({ m0: undefined, m1: undefined, alpha: undefined, beta: undefined, correlation: undefined, k: undefined })
          }
        >
          {w.reset}
        </button>
      )}
    </section>
  );

  function set(limit: Limit, text: string) {
    const value = text.trim() === '' ? Number.NaN : Number(text) / scaleOf(limit);
    const same = Math.abs(value - usual[limit]) < 1e-9;
    change({ [limit]: Number.isNaN(value) || same ? undefined : tidy(value) });
  }
}

const tidy = (value: number) => Number(value.toPrecision(6));
