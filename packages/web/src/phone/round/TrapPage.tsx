import type { SkipReason } from '@duskwatch/core';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import { capital, countText, heightText, lastVisitText, local } from '../shared/figures.ts';
import { nextPlace, type StopProgress } from '../shared/progress.ts';
import {
  checkFrom,
  choose,
  missing,
  newUnsavedCheck,
  OFFERED_REASONS,
  type UnsavedCheck,
  unsavedOf,
} from '../shared/unsaved-check.ts';
import { ofKind, type Written } from '../shared/written.ts';
import { Counts, Pad } from './CountPad.tsx';
import { Extras } from './Extras.tsx';
import { SkipSheet } from './SkipSheet.tsx';
import type { StopProps } from './stop.ts';

interface Props extends StopProps {
  readonly skip: (trapIds: readonly string[], reason: SkipReason) => Promise<void>;
  readonly openHere: readonly string[];
}

/** One trap, one screen. An ordinary visit is the digits and one tap. */
export function TrapPage(props: Props) {
  const { state, device, on, progress, at, trap, go, tell } = props;
  const saved = savedHere(props);
  const correcting = saved !== null && saved.value !== null;
  const [draft, setDraft] = useState<UnsavedCheck>(() => device.draft(trap.trapId, on) ?? firstDraft(props, saved));
  const [lacks, setLacks] = useState<ReturnType<typeof missing> | 'failed'>(null);
  const [saving, setSaving] = useState(false);
  const insect = capital(local(trap.insectName));
  const here = { station: at.stop.station, trapId: trap.trapId };
  const next = correcting ? null : nextPlace(progress, here);

  const change = (make: (before: UnsavedCheck) => UnsavedCheck) => {
    setLacks(null);
    const after = make(draft);
    setDraft(after);
    void device.keepDraft(trap.trapId, on, after);
  };
  const save = async () => {
    if (saving) return;
    const lack = missing(draft);
    setLacks(lack);
    if (lack) return;
    setSaving(true);
    try {
      const takeBack = await device.save(draft, { trap, stop: at.stop, on }, saved);
      go(next ? { station: next.station, trap: next.trapId } : {});
      if (correcting) return;
      const undo = async () => {
        await takeBack();
        go({ station: here.station, trap: here.trapId });
      };
      const said = checkFrom(draft, { trapId: trap.trapId, checkedOn: on, visit: 1 }, null, null);
      tell({ text: w.trap.kept(trap.trapId, countText(said)), action: { name: w.trap.undo, run: () => void undo() } });
    } catch {
      setLacks('failed');
      setSaving(false);
    }
  };

  const skipped = at.traps.find((each) => each.trap.trapId === trap.trapId)?.state;
  return (
    <main className="round-body trap" id="page">
      <TrapHead {...props} />
      {correcting && <p className="hint correcting">{w.trap.correcting}</p>}
      {skipped?.kind === 'skipped' && <p className="hint">{w.trap.skippedBefore(w.skipSheet.reasons[skipped.skip.reason])}</p>}
      <Counts draft={draft} insect={insect} change={change} />
      {missing(draft) === 'unfit-reason' ? <WhatIsWrong change={change} /> : <Pad change={change} />}
      <Condition draft={draft} change={change} />
      <Extras {...{ state, device, on, trap, draft, change }} stop={at.stop} />
      <div className="round-foot">
        <Problem lacks={lacks} />
        {correcting ? (
          <button type="button" className="big narrow" onClick={() => go({})}>
            {w.trap.cancel}
          </button>
        ) : (
          <SkipSheet trapId={trap.trapId} open={props.openHere} skip={props.skip} />
        )}
        <button type="button" className="big primary" aria-busy={saving} onClick={() => void save()}>
          {saving ? w.trap.saving : correcting ? w.trap.correct : next ? saveTo(next, here.station) : w.trap.saveLast}
        </button>
      </div>
    </main>
  );
}

const saveTo = (next: { station: string; trapId: string }, station: string) =>
  w.trap.saveNext(next.station === station ? next.trapId : next.station);

/** The check of this round at this trap; also one just taken back, so that saving anew says the same record again. */
function savedHere({ state, trap, on }: Props): Written<'checks'> | null {
  const after = state.round?.afterPlace ?? Infinity;
  const own = ofKind(state.written, 'checks').findLast((each) => each.last.trapId === trap.trapId && each.firstPlace > after);
  return own && (own.value !== null || own.last.checkedOn === on) ? own : null;
}

function firstDraft({ state, trap, on }: Props, saved: Written<'checks'> | null): UnsavedCheck {
  const usual = trap.lure?.lifeDays ?? null;
  if (!saved) return newUnsavedCheck(usual);
  const lure = ofKind(state.written, 'lures').findLast(({ key, value }) => key === `${trap.trapId}|${on}` && value !== null);
  return unsavedOf(saved.last, { changed: lure !== undefined, lifeDays: lure ? lure.last.lifeDays : usual });
}

function TrapHead({ at, trap, on, go }: Props) {
  const all = [...at.traps.map((each) => each.trap), ...at.others];
  const asked = at.traps.some((each) => each.trap.trapId === trap.trapId);
  const live = trap.design === 'mesh-cone' || trap.design === 'wire-cone';
  const facts = [
    [capital(w.trap.design[trap.design]), trap.heightM === null ? '' : w.trap.height(heightText(trap.heightM))]
      .filter(Boolean)
      .join(', '),
    at.stop.fields.map(({ name }) => name).join(', '),
  ];
  return (
    <div className="round-title">
      <h1>
        {at.stop.station}
        {all.length === 1 && <span className="trap-id"> {trap.trapId}</span>}
      </h1>
      {all.length > 1 && <TrapTabs {...{ all, at, trap, go }} />}
      <p>{facts.filter(Boolean).join(' · ')}</p>
      <p>
        {lastVisitText(trap, on)}
        {!asked && ` · ${w.trap.notDue(shortDay(trap.checkDue))}`}
      </p>
      {live && <p className="live-moths">{w.trap.liveMoths}</p>}
    </div>
  );
}

function TrapTabs({ all, at, trap, go }: Pick<Props, 'at' | 'trap' | 'go'> & { all: readonly Props['trap'][] }) {
  const stateOf = (trapId: string): StopProgress['traps'][number]['state'] | null =>
    at.traps.find((each) => each.trap.trapId === trapId)?.state ?? null;
  return (
    <nav className="trap-tabs" aria-label={w.trap.here}>
      {all.map((each) => {
        const state = stateOf(each.trapId);
        return (
          <button
            key={each.trapId}
            type="button"
            aria-current={each.trapId === trap.trapId}
            onClick={() => go({ station: at.stop.station, trap: each.trapId })}
          >
            {each.trapId}
            <small>{state?.kind === 'saved' ? countText(state.check) : state ? w.list.open(1) : w.list.notDue}</small>
          </button>
        );
      })}
    </nav>
  );
}

type Change = (make: (before: UnsavedCheck) => UnsavedCheck) => void;

function Condition({ draft, change }: { draft: UnsavedCheck; change: Change }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of toggle buttons, named as a group; a fieldset would draw a box.
    <div className="choices three" role="group" aria-label={w.trap.condition}>
      {(['fit', 'doubtful', 'unfit'] as const).map((condition) => (
        <button
          key={condition}
          type="button"
          aria-pressed={draft.condition === condition}
          onClick={() => change((before) => choose(before, condition))}
        >
          {w.trap.conditions[condition]}
          {condition === 'unfit' && draft.unfit && <small>{w.trap.reasons[draft.unfit]}</small>}
        </button>
      ))}
    </div>
  );
}

/** Stands where the pad was, until it is answered: then the pad comes back, for a trap that is full has moths in it. */
function WhatIsWrong({ change }: { change: Change }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: as above.
    <div className="what" role="group" aria-label={w.trap.what}>
      <p>{w.trap.what}</p>
      {OFFERED_REASONS.map((reason) => (
        <button key={reason} type="button" onClick={() => change((before) => ({ ...before, unfit: reason }))}>
          {capital(w.trap.reasons[reason])}
        </button>
      ))}
    </div>
  );
}

function Problem({ lacks }: { lacks: ReturnType<typeof missing> | 'failed' }) {
  const text = { count: w.trap.needCount, 'unfit-reason': w.trap.needReason, failed: w.trap.failed };
  return (
    <p className="problem" role="alert">
      {lacks && text[lacks]}
    </p>
  );
}
