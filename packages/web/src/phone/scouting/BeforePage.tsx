import type { IsoDay, ScoutingField, ScoutingPair, ScoutingView } from '@duskwatch/core';
import { useState } from 'react';
import { dayText } from '../../format/day.ts';
import { insectName, stageName } from '../../text/names.ts';
import { roundWords } from '../../text/round.ts';
import { planWords, walkWords as w } from '../../text/walk.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { capital, local } from '../shared/figures.ts';
import { Sign } from '../shared/Sign.tsx';
import { sampledOf, spreadOf, walkId } from '../shared/walk.ts';
import type { ScoutSearch } from './search.ts';

interface Props {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly view: ScoutingView;
  readonly field: ScoutingField;
  readonly pair: ScoutingPair;
  readonly on: IsoDay;
  readonly go: (to: ScoutSearch) => void;
}

/** What to look at, where to walk and what may happen to a person, before the first plant. */
export function BeforePage(props: Props) {
  const { state, device, view, field, pair, on, go } = props;
  const keepOut = field.keepOut.filter(({ until }) => until >= on);
  const [entered, setEntered] = useState(keepOut.length === 0);
  const [ruleId, setRule] = useState(pair.rules[0]?.ruleId ?? null);
  const [stage, setStage] = useState<string | null>(null);
  if (!entered) return <KeepOut {...{ field, keepOut, go }} enter={() => setEntered(true)} />;

  const plan = view.plans.find((each) => each.ruleId === ruleId) ?? null;
  const counting = plan ? null : view.counting.find(({ insect }) => insect === pair.insect)!;
  const sampled = sampledOf({ plan, counting });
  const walk = spreadOf({ plan, counting });
  const look = view.looks.find((each) => each.insect === pair.insect && each.crop === field.crop && each.unit === sampled.unit);
  const insect = local(view.insects.find(({ id }) => id === pair.insect)!.commonName);
  const match = pair.rules.find((each) => each.ruleId === ruleId)?.match;
  const stages = view.crops.find(({ crop }) => crop === field.crop)?.stages ?? [];
  const start = () =>
    device.keepWalk({
      id: walkId(field.fieldId, pair.insect),
      person: state.scouting!.person,
      fieldId: field.fieldId,
      insect: pair.insect,
      startedOn: on,
      plan,
      counting,
      counts: [],
      stage,
    });

  return (
    <main className="round-body" id="page">
      <div className="round-title">
        <h1>{field.name}</h1>
        <p>{capital(insect)}</p>
      </div>
      <section aria-labelledby="plan">
        <h2 id="plan">{w.before.plan}</h2>
        {pair.rules.length > 1 && (
          // biome-ignore lint/a11y/useSemanticElements: buttons, named as a group; a fieldset would draw a box.
          <div className="choices" role="group" aria-label={w.before.rule}>
            {pair.rules.map((rule) => {
              const other = view.plans.find((each) => each.ruleId === rule.ruleId)!;
              return (
                <button
                  key={rule.ruleId}
                  type="button"
                  aria-pressed={rule.ruleId === ruleId}
                  onClick={() => setRule(rule.ruleId)}
                >
                  {planWords.figure(other)}
                  <small>{(other.stages ?? []).map((each) => stageName(field.crop, each)).join(', ')}</small>
                </button>
              );
            })}
          </div>
        )}
        <p>
          {plan ? (
            <>
              {pair.rules.length === 1 && <strong>{capital(planWords.figure(plan))}. </strong>}
              {w.before.howMany(planWords.units(plan.minSamples, plan.unit), plan.maxSamples)}
            </>
          ) : (
            <>
              {planWords.noFigure(insect)} {w.before.countAll(planWords.units(counting!.units, counting!.unit))}
            </>
          )}
        </p>
        {plan?.combinedWith && <p>{planWords.together(insectName(plan.combinedWith.insect), plan.combinedWith.share, plan)}</p>}
        {plan && <p className="hint">{w.before.source(plan.source)}</p>}
      </section>
      <section aria-labelledby="look">
        <h2 id="look">{w.before.look}</h2>
        <p className="scout-look">{look ? local(look.text) : planWords.sheet.noLook}</p>
        <p>{planWords.counts(sampled)}</p>
      </section>
      <section aria-labelledby="path">
        <h2 id="path">{w.before.walk}</h2>
        <ol className="scout-path">
          {planWords.path(walk, sampled.unit).map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </section>
      {stages.length > 0 && (
        <section aria-labelledby="stage">
          <h2 id="stage">{w.before.stage}</h2>
          {plan?.stages && match !== 'now' && (
            <p className="hint">{w.before.stageWhy(plan.stages.map((each) => stageName(field.crop, each)).join(', '))}</p>
          )}
          {/* biome-ignore lint/a11y/useSemanticElements: buttons, named as a group; a fieldset would draw a box. */}
          <div className="choices wrap" role="group" aria-labelledby="stage">
            {stages.map(({ id, name }) => (
              <button
                key={id}
                type="button"
                aria-pressed={stage === id}
                onClick={() => setStage((before) => (before === id ? null : id))}
              >
                {capital(local(name))}
              </button>
            ))}
          </div>
        </section>
      )}
      <section className="before" aria-labelledby="before">
        <h2 id="before">{w.before.cautions}</h2>
        <ul>
          {planWords.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <div className="round-foot">
        <button type="button" className="big primary" onClick={() => void start()}>
          {w.before.start}
        </button>
      </div>
    </main>
  );
}

function KeepOut(props: Pick<Props, 'field' | 'go'> & { keepOut: ScoutingField['keepOut']; enter: () => void }) {
  const k = roundWords.keepOut;
  return (
    <main className="round-body keep-out" id="page">
      <div className="keep-out-sign">
        <Sign />
        <h1>{k.title}</h1>
        <p>{k.notOver}</p>
      </div>
      <section>
        <h2>{props.field.name}</h2>
        {props.keepOut.map((each) => (
          <p key={`${each.product} ${each.until}`}>{planWords.keepOut(dayText(each.until), each.product, each.hours)}</p>
        ))}
      </section>
      <div className="round-foot stacked">
        <button type="button" className="big primary" onClick={() => props.go({})}>
          {w.before.other}
        </button>
        <button type="button" className="big" onClick={props.enter}>
          {w.before.goOn}
        </button>
      </div>
    </main>
  );
}
