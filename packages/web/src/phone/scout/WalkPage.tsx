import { countsInsects, type ScoutingView } from '@duskwatch/core';
import { useState } from 'react';
import { planWords, walkWords as w } from '../../text/walk.ts';
import type { RoundDevice } from '../shared/device.ts';
import { capital, local } from '../shared/figures.ts';
import type { ToastMessage } from '../shared/Toast.tsx';
import { progressOf, sampledOf, sampleOf, spreadOf, type Walk, withoutLast, withUnit } from '../shared/walk.ts';
import type { WantedRecord } from '../shared/written.ts';
import { shareText } from './ChoosePage.tsx';
import type { ScoutSearch } from './search.ts';

interface Props {
  readonly walk: Walk;
  readonly device: RoundDevice;
  readonly view: ScoutingView;
  readonly go: (to: ScoutSearch) => void;
  readonly tell: (told: ToastMessage) => void;
  readonly ended: (walk: Walk | null) => void;
}

/** As many as anybody finds on one plant. */
const PAD = Array.from({ length: 12 }, (_, count) => count);

/** One tap for each plant, and what all of them say so far. */
export function WalkPage({ walk, device, view, go, tell, ended }: Props) {
  const [stopping, setStopping] = useState(false);
  const [failed, setFailed] = useState(false);
  const { at, ended: over, place, share } = progressOf(walk);
  const sampled = sampledOf(walk);
  const field = view.fields.find(({ fieldId }) => fieldId === walk.fieldId);
  const insect = view.insects.find(({ id }) => id === walk.insect);
  const name = field?.name ?? walk.fieldId;
  const { places } = spreadOf(walk);

  const change = (make: (before: Walk) => Walk) =>
    device.changeWalk(walk.id, make).then(
      () => setFailed(false),
      () => setFailed(true),
    );
  const save = async () => {
    const sayings: WantedRecord[] = [{ kind: 'samples', value: sampleOf(walk) }];
    if (walk.stage)
      sayings.push({ kind: 'stages', value: { fieldId: walk.fieldId, observedOn: walk.startedOn, stage: walk.stage } });
    try {
      const takeBack = await device.saveWalk(walk, sayings);
      ended(walk);
      go({});
      const undo = async () => {
        await takeBack();
        ended(null);
        go({ field: walk.fieldId, insect: walk.insect });
      };
      const found = `${planWords.units(at.samples, sampled.unit)}, ${planWords.found(at.total, sampled)}`;
      tell({ text: w.saved.text(name, found), action: { name: w.saved.undo, run: () => void undo() } });
    } catch {
      setFailed(true);
    }
  };
  const discard = async () => {
    await device.dropWalk(walk.id);
    go({});
    const undo = async () => {
      await device.keepWalk(walk);
      go({ field: walk.fieldId, insect: walk.insect });
    };
    tell({ text: w.saved.discarded, action: { name: w.saved.undo, run: () => void undo() } });
  };

  return (
    <main className={`round-body scout-walk${over ? ' is-over' : ''}`} id="page">
      <div className="round-title">
        <h1>{name}</h1>
        <p>
          {capital(insect ? local(insect.commonName) : walk.insect)}
          {!over && ` · ${planWords.place(place.place, place.lap, places)}, ${w.walk.left(place.left)}`}
        </p>
      </div>
      <div className={`scout-standing ${at.judgement}`} role="status">
        {(walk.plan || !over) && <p className="scout-answer">{planWords.answer[at.judgement]}</p>}
        <p className="scout-tally">
          {w.walk.tally(planWords.units(at.samples, sampled.unit), planWords.found(at.total, sampled))}
        </p>
        {share && at.samples > 0 && <p>{shareText(share)}</p>}
        <p>{over ? walk.plan && planWords.meaning(at.judgement, walk.plan) : planWords.toGo(at, sampled)}</p>
        {over && walk.plan && <p>{planWords.next(at.judgement)}</p>}
      </div>
      {!over && !stopping && (
        // biome-ignore lint/a11y/useSemanticElements: a pad of keys, named as a group; a fieldset would draw a box.
        <div className={countsInsects(sampled) ? 'pad scout-pad' : 'scout-pair'} role="group" aria-label={w.walk.pad}>
          {countsInsects(sampled) ? (
            PAD.map((count) => (
              <button key={count} type="button" onClick={() => void change((before) => withUnit(before, count))}>
                {count}
              </button>
            ))
          ) : (
            <>
              <button type="button" className="is-clean" onClick={() => void change((before) => withUnit(before, 0))}>
                {w.walk.clean}
              </button>
              <button type="button" className="is-marked" onClick={() => void change((before) => withUnit(before, 1))}>
                {capital(planWords.marked(sampled.sign))}
              </button>
            </>
          )}
        </div>
      )}
      {failed && (
        <p className="problem" role="alert">
          {w.walk.failed}
        </p>
      )}
      {stopping ? (
        <div className="round-foot stacked">
          <p className="hint">{w.walk.stopText}</p>
          <button type="button" className="big primary" disabled={at.samples === 0} onClick={() => void save()}>
            {w.walk.save}
          </button>
          <button type="button" className="big" onClick={() => void discard()}>
            {w.walk.discard}
          </button>
          <button type="button" className="big" onClick={() => setStopping(false)}>
            {w.walk.back}
          </button>
        </div>
      ) : (
        <div className="round-foot">
          <button
            type="button"
            className="big"
            aria-disabled={at.samples === 0}
            onClick={() => at.samples > 0 && void change(withoutLast)}
          >
            {w.walk.undo}
          </button>
          {over ? (
            <button type="button" className="big primary" onClick={() => void save()}>
              {w.walk.save}
            </button>
          ) : (
            <button type="button" className="big" onClick={() => setStopping(true)}>
              {w.walk.stop}
            </button>
          )}
        </div>
      )}
    </main>
  );
}
