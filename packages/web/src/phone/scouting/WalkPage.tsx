import { countsInsects, type ScoutingView } from '@duskwatch/core';
import { useState } from 'react';
import { planWords, walkWords as w } from '../../text/walk.ts';
import type { RoundDevice } from '../shared/device.ts';
import { capital, local } from '../shared/figures.ts';
import type { ToastMessage } from '../shared/Toast.tsx';
import { atNewPlace, progressOf, sampledOf, sampleOf, spreadOf, type Walk, withoutLast, withUnit } from '../shared/walk.ts';
import type { WantedRecord } from '../shared/written.ts';
import { Ended } from './Ended.tsx';
import type { ScoutSearch } from './search.ts';
import { useSteadyHand } from './useSteadyHand.ts';

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

/** One tap for each plant. The whole screen is the state: go on, walk on, or stop with an answer. */
export function WalkPage({ walk, device, view, go, tell, ended }: Props) {
  const [stopping, setStopping] = useState(false);
  const [failed, setFailed] = useState(false);
  /** Units seen when somebody said that they had come to the next place. */
  const [arrivedAt, setArrivedAt] = useState(0);
  const steady = useSteadyHand();
  const { at, ended: over, place } = progressOf(walk);
  const sampled = sampledOf(walk);
  const spread = spreadOf(walk);
  const field = view.fields.find(({ fieldId }) => fieldId === walk.fieldId);
  const insect = view.insects.find(({ id }) => id === walk.insect);
  const name = field?.name ?? walk.fieldId;
  const walking = !over && !stopping && atNewPlace(walk) && arrivedAt !== at.samples;

  const change = (make: (before: Walk) => Walk) =>
    device.changeWalk(walk.id, make).then(
      () => setFailed(false),
      () => setFailed(true),
    );
  const add = (count: number) => steady(() => void change((before) => withUnit(before, count)));
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
          {!over && !walking && ` · ${planWords.place(place.place, place.lap, spread.places)}, ${w.walk.left(place.left)}`}
        </p>
      </div>
      <div className={`scout-standing ${walking ? 'walking' : at.judgement}`} role="status">
        {over ? (
          <Ended walk={walk} farm={field?.farm ?? name} />
        ) : walking ? (
          <WalkOn walk={walk} />
        ) : (
          <>
            {walk.plan && <p className="scout-answer">{planWords.answer[at.judgement]}</p>}
            <p>{planWords.toGo(at, sampled)}</p>
          </>
        )}
        <p className="scout-tally">
          {w.walk.tally(planWords.units(at.samples, sampled.unit), planWords.found(at.total, sampled))}
        </p>
      </div>
      {!over && !stopping && !walking && (
        // biome-ignore lint/a11y/useSemanticElements: a pad of keys, named as a group; a fieldset would draw a box.
        <div className={countsInsects(sampled) ? 'pad scout-pad' : 'scout-pair'} role="group" aria-label={w.walk.pad}>
          {countsInsects(sampled) ? (
            PAD.map((count) => (
              <button key={count} type="button" onClick={() => add(count)}>
                {count}
              </button>
            ))
          ) : (
            <>
              <button type="button" className="is-clean" onClick={() => add(0)}>
                {w.walk.clean}
              </button>
              <button type="button" className="is-marked" onClick={() => add(1)}>
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
            onClick={() => at.samples > 0 && steady(() => void change(withoutLast))}
          >
            {w.walk.undo}
          </button>
          {!over && (
            <button type="button" className="big" onClick={() => setStopping(true)}>
              {w.walk.stop}
            </button>
          )}
          {over && (
            <button type="button" className="big primary" onClick={() => steady(() => void save())}>
              {w.walk.save}
            </button>
          )}
          {walking && (
            <button type="button" className="big primary whole" onClick={() => steady(() => setArrivedAt(at.samples))}>
              {w.walk.arrived(place.place)}
            </button>
          )}
        </div>
      )}
    </main>
  );
}

/** Between two places there is one thing to do, in letters to be read at arm's length. */
function WalkOn({ walk }: { readonly walk: Walk }) {
  const { place } = progressOf(walk);
  const { perPlace } = spreadOf(walk);
  return (
    <>
      {walk.plan && (
        <p className="scout-go">
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d="M3 12h17M14 6l6 6-6 6" />
          </svg>
          {w.walk.goOn}
        </p>
      )}
      <p className="scout-answer">{w.walk.walkTo(place.place)}</p>
      <p>
        {w.walk.walkHow(planWords.units(perPlace, sampledOf(walk).unit))} {place.lap > 1 && w.walk.lap}
      </p>
    </>
  );
}
