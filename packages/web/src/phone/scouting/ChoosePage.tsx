import type { IsoDay, Role, ScoutingField, ScoutingPair, ScoutingView } from '@duskwatch/core';
import { useState } from 'react';
import { dayText, longDay, shortDay } from '../../format/day.ts';
import { words } from '../../text/index.ts';
import { cropText, stageName } from '../../text/names.ts';
import { roundWords } from '../../text/round.ts';
import { planWords, walkWords as w } from '../../text/walk.ts';
import { wordingIn } from '../../text/wording.ts';
import { domId } from '../../ui/dom-id.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { capital, local, whole } from '../shared/figures.ts';
import type { ToastMessage } from '../shared/Toast.tsx';
import { progressOf, sampledOf, type Walk, walkId } from '../shared/walk.ts';
import { DecisionSheet } from './DecisionSheet.tsx';
import type { ScoutSearch } from './search.ts';
import { shareText } from './share.ts';

interface Props {
  readonly state: DeviceState;
  readonly view: ScoutingView;
  readonly on: IsoDay;
  readonly device: RoundDevice;
  readonly last: Walk | null;
  readonly tell: (told: ToastMessage) => void;
  readonly go: (to: ScoutSearch) => void;
}

/** With fewer fields than this there is nothing to search in. */
const MANY_FIELDS = 12;

export function ChoosePage({ state, device, view, on, last, go, tell }: Props) {
  const [wanted, setWanted] = useState('');
  const like = wanted.trim().toLowerCase();
  const fields = view.fields.filter(({ name, farm }) => `${name} ${farm}`.toLowerCase().includes(like));
  return (
    <main className="round-body" id="page">
      <div className="round-title">
        <h1>{w.title}</h1>
        <p>
          {longDay(on)} · {view.program.name}
          {view.program.invented && <span className="round-invented"> {words.app.invented}</span>}
        </p>
      </div>
      {last && <LastResult {...{ state, device, view, on, tell }} walk={last} />}
      {view.fields.length === 0 && (
        <p className="start-sum">
          <strong>{w.nothing.none}</strong> {w.nothing.noneHow}
        </p>
      )}
      {view.fields.length > 0 && <p className="start-sum">{w.choose.lead}</p>}
      {view.fields.length > MANY_FIELDS && (
        <label className="scout-find">
          <span>{w.choose.find}</span>
          <input type="search" value={wanted} onChange={(event) => setWanted(event.currentTarget.value)} />
        </label>
      )}
      {view.fields.length > 0 && fields.length === 0 && <p className="hint">{w.choose.noMatch}</p>}
      {fields.map((field) => (
        <FieldChoice key={field.fieldId} {...{ field, view, state, on, go }} />
      ))}
      {view.on !== on && <p className="hint">{w.choose.read(dayText(view.on))}</p>}
    </main>
  );
}

function FieldChoice(props: Omit<Props, 'last' | 'device' | 'tell'> & { field: ScoutingField }) {
  const { field, view, state, on, go } = props;
  const keepOut = field.keepOut.some(({ until }) => until >= on);
  return (
    <section className="scout-field" aria-labelledby={domId('field', field.fieldId)}>
      <h2 id={domId('field', field.fieldId)}>
        {field.name} {keepOut && <em className="warning-word">{roundWords.keepOut.short}</em>}
      </h2>
      <p className="hint">
        {[field.farm, cropText(field), field.stage ? stageName(field.crop, field.stage.stage) : ''].filter(Boolean).join(' · ')}
      </p>
      <ul className="stops">
        {field.pairs.map((pair) => (
          <li key={pair.insect}>
            <button type="button" className="stop-row" onClick={() => go({ field: field.fieldId, insect: pair.insect })}>
              <span className="stop-name">
                <strong>{capital(local(view.insects.find(({ id }) => id === pair.insect)!.commonName))}</strong>
                <small>{pairText(state, field, pair)}</small>
              </span>
              <span className="stop-state">
                <b>{wordingIn('C').verb[pair.verb]}</b>
                {wordingIn('C').when(pair)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function pairText({ walks }: DeviceState, { fieldId }: ScoutingField, { insect, lastSample }: ScoutingPair): string {
  const walk = walks.find(({ id }) => id === walkId(fieldId, insect));
  if (walk) return w.choose.open(whole(walk.counts.length));
  if (!lastSample) return '';
  const found = lastSample.infested ?? lastSample.total;
  return w.choose.last(shortDay(lastSample.sampledOn), found === null ? '' : w.choose.of(found, lastSample.examined));
}

/** Who may write down a decision: it is not the scout's. */
const MAY_DECIDE: ReadonlySet<string> = new Set<Role>(['coordinator', 'grower']);

/** What the walk just saved has found, in words that stay. */
function LastResult(props: Omit<Props, 'last' | 'go'> & { readonly walk: Walk }) {
  const { state, device, view, on, walk, tell } = props;
  const { at, share } = progressOf(walk);
  const field = view.fields.find(({ fieldId }) => fieldId === walk.fieldId);
  const sampled = sampledOf(walk);
  return (
    <section className="scout-result" aria-labelledby="last-result">
      <h2 id="last-result">
        {w.saved.result}: {field?.name}
      </h2>
      {walk.plan && at.judgement !== 'go-on' && <p className="scout-answer">{planWords.answer[at.judgement]}</p>}
      <p>{w.walk.tally(planWords.units(at.samples, sampled.unit), planWords.found(at.total, sampled))}</p>
      {walk.plan && at.judgement !== 'go-on' && (
        <p>
          {planWords.meaning(at.judgement, walk.plan)} {planWords.next(at.judgement)}
        </p>
      )}
      {share && <p>{shareText(share)}</p>}
      <p className="hint">{w.saved.advice}</p>
      {walk.plan && at.judgement !== 'below' && MAY_DECIDE.has(state.role ?? '') && (
        <DecisionSheet
          {...{ device, on }}
          key={state.written.length}
          fieldId={walk.fieldId}
          insect={walk.insect}
          decision="not-treated"
          without={at.judgement === 'above' ? ['sample-below'] : []}
          said={(takeBack) => tell({ text: w.decision.kept, action: { name: w.saved.undo, run: () => void takeBack() } })}
        />
      )}
    </section>
  );
}
