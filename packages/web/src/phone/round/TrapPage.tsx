import type { RoundView, SkipReason } from '@duskwatch/core';
import { useState } from 'react';
import { weekdayOf } from '../../format/day.ts';
import { nightsCounted, oddCount } from '../../shared/check/odd-count.ts';
import {
  type Change,
  checkFrom,
  choose,
  type Missing,
  mayCount,
  missing,
  newUnsavedCheck,
  type UnsavedCheck,
  unsavedOf,
} from '../../shared/check/unsaved-check.ts';
import { roundWords as w } from '../../text/round.ts';
import { visitWords as v } from '../../text/visit.ts';
import { capital, countText, shortName, whole } from '../shared/figures.ts';
import { nextPlace, ofRound } from '../shared/progress.ts';
import { ofKind, type Written } from '../shared/written.ts';
import { Counts, Pad } from './CountPad.tsx';
import { Extras } from './Extras.tsx';
import { LureBar } from './LureBar.tsx';
import { LureSheet } from './LureSheet.tsx';
import { OddCount } from './OddCount.tsx';
import { SkipSheet } from './SkipSheet.tsx';
import type { StopProps } from './stop.ts';
import { TrapHead } from './TrapHead.tsx';
import { Unfit } from './Unfit.tsx';

interface Props extends StopProps {
  readonly view: RoundView;
  readonly skip: (trapIds: readonly string[], reason: SkipReason) => Promise<void>;
  readonly openHere: readonly string[];
}

/** One trap, one screen. An ordinary visit is the digits and one tap. */
export function TrapPage(props: Props) {
  const { state, device, on, progress, at, trap, view, go, tell } = props;
  const saved = savedHere(props);
  const correcting = saved !== null && saved.value !== null;
  const [draft, setDraft] = useState<UnsavedCheck>(() => device.draft(trap.trapId, on) ?? firstDraft(props, saved));
  const [lacks, setLacks] = useState<Missing | 'failed' | null>(null);
  const [saving, setSaving] = useState(false);
  const [asked, ask] = useState<'not-yet' | 'now' | 'answered' | 'photo'>('not-yet');
  const insect = capital(shortName(trap.insectName));
  const here = { station: at.stop.station, trapId: trap.trapId };
  const next = correcting ? null : nextPlace(progress, here);
  const asksLure = !correcting && trap.lure?.change === true;
  const odd = asked === 'now' ? oddCount(trap, view, on, Number(draft.target)) : null;

  const change: Change = (make) => {
    setLacks(null);
    const after = make(draft);
    // Another count is another question.
    if (after.target !== draft.target) ask('not-yet');
    setDraft(after);
    void device.keepDraft(trap.trapId, on, after);
  };
  const keep = async () => {
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
  const leave = () => {
    void device.keepDraft(trap.trapId, on, null);
    go({});
  };
  const save = () => {
    if (saving) return;
    const lack = missing(draft, asksLure);
    setLacks(lack);
    if (lack) return;
    // A correction is made long after the moths were in hand.
    const strange =
      !correcting && mayCount(draft) && draft.target !== '' && oddCount(trap, view, on, Number(draft.target)) !== null;
    if (strange && asked === 'not-yet') return ask('now');
    void keep();
  };

  return (
    <main className="round-body trap" id="page">
      <div className="trap-say">
        <TrapHead {...props} lure={!asksLure && <LureSheet {...{ draft, change, trap }} buttonClass="which" />} />
        {correcting && <p className="hint correcting">{w.trap.correcting}</p>}
        <Skipped {...props} />
        {asksLure && <LureBar {...{ draft, change, trap }} asked={lacks === 'lure'} />}
        {mayCount(draft) && (
          <Counts
            {...{ draft, insect, change }}
            label={v.nights(insect, nightsCounted(trap, on))}
            last={lastText(trap.lastVisit)}
          />
        )}
      </div>
      <div className="trap-pad">
        {mayCount(draft) && missing(draft) !== 'unfit-reason' ? (
          <Pad change={change} />
        ) : (
          <Unfit {...{ draft, change, trap, on }} />
        )}
      </div>
      <div className="trap-more">
        <Condition draft={draft} change={change} />
        <Extras {...{ state, device, on, trap, draft, change }} stop={at.stop} photoOpen={asked === 'photo'} />
      </div>
      <div className="round-foot">
        <Problem lacks={lacks} />
        {correcting ? (
          <button type="button" className="big narrow" onClick={leave}>
            {w.trap.cancel}
          </button>
        ) : (
          <SkipSheet trapId={trap.trapId} open={props.openHere} skip={props.skip} />
        )}
        <button type="button" className="big primary" aria-busy={saving} onClick={save}>
          {saving ? w.trap.saving : correcting ? w.trap.correct : next ? w.trap.saveNext(nextName(next, props)) : w.trap.saveLast}
        </button>
      </div>
      {odd && <OddCount odd={odd} yes={() => void keep()} no={() => ask('not-yet')} photo={() => ask('photo')} />}
    </main>
  );
}

/** The next trap here by its insect, or the next station. */
function nextName(next: { station: string; trapId: string }, { at }: Props): string {
  if (next.station !== at.stop.station) return next.station;
  const traps = at.stop.traps.filter((each) => each.trapId === next.trapId);
  const alike = at.stop.traps.filter((each) => each.insect === traps[0]?.insect).length > 1;
  return alike || !traps[0] ? next.trapId : shortName(traps[0].insectName);
}

function lastText(last: Props['trap']['lastVisit']): string {
  if (!last) return v.never;
  if (last.count === null) return v.lastUnfit(weekdayOf(last.on));
  return last.emptied ? v.last(whole(last.count), weekdayOf(last.on)) : v.leftIn(whole(last.count));
}

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

/** A trap passed by on this round says so, and how to take that back. */
function Skipped({ state, trap, device, tell }: Props) {
  const skip = state.round && ofRound(state.round, state.written, 'skips').get(trap.trapId);
  if (!skip) return null;
  const back = () => void device.say([], [skip]).then(() => tell({ text: v.unskipped(trap.trapId) }));
  return (
    <div className="skipped-note">
      <p>{v.skipped(w.skipSheet.reasons[skip.last.reason])}</p>
      <button type="button" className="big" onClick={back}>
        {v.unskip}
      </button>
    </div>
  );
}

function Condition({ draft, change }: { readonly draft: UnsavedCheck; readonly change: Change }) {
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

function Problem({ lacks }: { readonly lacks: Missing | 'failed' | null }) {
  const text = { count: w.trap.needCount, 'unfit-reason': w.trap.needReason, lure: v.lure.needed, failed: w.trap.failed };
  return (
    <p className="problem" role="alert">
      {lacks && text[lacks]}
    </p>
  );
}
