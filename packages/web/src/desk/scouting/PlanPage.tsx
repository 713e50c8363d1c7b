import { catalogue, type PlanOptions, planCurves, planFor, type ScoutingPlan } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMemo } from 'react';
import { dayText } from '../../format/day.ts';
import { language } from '../../text/language.ts';
import { cropText, insectName, localName, stageName } from '../../text/names.ts';
import { scoutingWords } from '../../text/scouting.ts';
import { planWords, walkWords } from '../../text/walk.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { Effect } from './Effect.tsx';
import { LimitsForm } from './LimitsForm.tsx';
import { PlanCharts } from './PlanCharts.tsx';
import { scoutingQuery } from './queries.ts';
import { Rests } from './Rests.tsx';
import { LIMITS, type PlanSearch, sheetsAddress } from './search.ts';

const route = getRouteApi('/fields/$fieldId/scouting/$insect');

/** One plan: where to look, how many, when to stop, and what it does in a field of any level. */
export function PlanPage() {
  const w = scoutingWords.plan;
  const { fieldId, insect } = route.useParams();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const wording = useWording();
  const { data: view, error, refetch } = useQuery(scoutingQuery(search.on));
  const field = view?.fields.find((each) => each.fieldId === fieldId);
  const pair = field?.pairs.find((each) => each.insect === insect);
  const ruleId = search.rule ?? pair?.rules[0]?.ruleId;
  const usual = view?.plans.find((each) => each.ruleId === ruleId) ?? null;
  const counting = view?.counting.find((each) => each.insect === insect) ?? null;
  const set = useMemo(() => planOf(usual, search), [usual, search]);
  const plan = set?.ok ? set.value : usual;
  const curves = useMemo(() => (plan ? planCurves(plan) : null), [plan]);
  const changed = LIMITS.some((limit) => search[limit] !== undefined);
  useTitle(w.title);
  const change = (part: Partial<PlanSearch>) =>
    void navigate({ search: (before) => ({ ...before, ...part }), replace: true, resetScroll: false });

  if (error && !view) return <Failure error={error} again={refetch} />;
  const name = insectName(insect);
  const sampled = plan ?? (counting ? { unit: counting.unit, sign: 'infested' as const } : null);
  const look =
    sampled && view?.looks.find((each) => each.insect === insect && each.crop === field?.crop && each.unit === sampled.unit);
  const sheet = [fieldId, insect, ...(ruleId ? [ruleId] : [])].join('|');
  return (
    <main className="page plan-page" id="page" aria-busy={!view}>
      <p className="back">
        <Link to="/fields/$fieldId" params={{ fieldId }} search={{ on: search.on }} hash={insect}>
          ‹ {field?.name ?? w.back}
        </Link>{' '}
        <Link to="/rounds/scouting" search={{ on: search.on }}>
          {w.all}
        </Link>
      </p>
      <div className="page-head">
        <div>
          <h1>
            {w.title}: {name}
          </h1>
          <p className="sub">
            {field
              ? [field.name, field.farm, cropText(field), field.stage ? stageName(field.crop, field.stage.stage) : '']
                  .filter(Boolean)
                  .join(' · ')
              : scoutingWords.loading}
          </p>
        </div>
        {pair && (
          <div className="actions">
            <a className="button" href={sheetsAddress([sheet], 'a4', language, search)}>
              {scoutingWords.print.onA4}
            </a>
            <a className="button" href={sheetsAddress([sheet], 'letter', language, search)}>
              {scoutingWords.print.onLetter}
            </a>
            <Link to="/scout" search={{ field: fieldId, insect }} className="button primary">
              {scoutingWords.phone}
            </Link>
          </div>
        )}
      </div>
      {view && !pair && <p className="absent">{w.notThere}</p>}
      {field?.keepOut.map((each) => (
        <p key={`${each.product} ${each.until}`} className="caution-line">
          {planWords.keepOut(dayText(each.until), each.product, each.hours)}
        </p>
      ))}
      {pair && sampled && (
        <div className="plan-how">
          <section aria-labelledby="figure">
            <h2 id="figure">{w.rule}</h2>
            {pair.rules.length > 1 && (
              <ul className="plan-rules">
                {pair.rules.map((rule) => (
                  <li key={rule.ruleId}>
                    <button
                      type="button"
                      className="button"
                      aria-pressed={rule.ruleId === ruleId}
                      onClick={() => change({ rule: rule.ruleId, m0: undefined, m1: undefined })}
                    >
                      {ruleText(view!.plans, rule.ruleId, field!.crop)}
                    </button>
                  </li>
                ))}
              </ul>
            )}
            {plan ? (
              <>
                <p>
                  <b>{planWords.figure(plan)}.</b> {planWords.basis(plan)}
                </p>
                {curves && planWords.risks(plan, curves.atM0, curves.atM1).map((risk) => <p key={risk}>{risk}</p>)}
                <p>{planWords.clumping(plan)}</p>
                <p className="key">{w.source(plan.source, wording.standing[plan.standing])}</p>
              </>
            ) : (
              <p>
                {planWords.noFigure(name)} {walkWords.before.countAll(planWords.units(counting!.units, counting!.unit))}
              </p>
            )}
          </section>
          <section aria-labelledby="look">
            <h2 id="look">{w.look}</h2>
            <p>{look ? localName(look.text) : planWords.sheet.noLook}</p>
            <p>{planWords.counts(sampled)}</p>
            {plan?.combinedWith && (
              <p>{planWords.together(insectName(plan.combinedWith.insect), plan.combinedWith.share, plan)}</p>
            )}
            <h2>{w.cautions}</h2>
            {planWords.cautions.map((caution) => (
              <p key={caution}>{caution}</p>
            ))}
          </section>
          <section aria-labelledby="walk">
            <h2 id="walk">{w.walk}</h2>
            <ol>
              {planWords.path((plan ?? counting!).walk, sampled.unit).map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          </section>
        </div>
      )}
      {usual && pair && <LimitsForm plan={usual} search={search} change={change} />}
      {set && !set.ok && (
        <p className="problem" role="alert">
          {set.problems.map(({ expected }) => w.refused(expected)).join(' ')}
        </p>
      )}
      {usual && plan && curves && pair && (
        <>
          {changed && set?.ok && <Effect usual={usual} set={plan} />}
          <PlanCharts plan={plan} curves={curves} />
          <Rests plan={plan} />
        </>
      )}
    </main>
  );
}

function planOf(usual: ScoutingPlan | null, search: PlanSearch) {
  const rule = usual && catalogue.rules.find(({ id }) => id === usual.ruleId);
  if (!rule) return null;
  const { m0, m1, alpha, beta, k, correlation } = search;
  const clumping = usual.clumping ?? undefined;
  return planFor(rule, { m0, m1, alpha, beta, k, correlation, clumping } satisfies PlanOptions);
}

function ruleText(plans: readonly ScoutingPlan[], ruleId: string, crop: string): string {
  const plan = plans.find((each) => each.ruleId === ruleId)!;
  const stages = (plan.stages ?? []).map((stage) => stageName(crop, stage)).join(', ');
  return [planWords.figure(plan), stages].filter(Boolean).join(' · ');
}
