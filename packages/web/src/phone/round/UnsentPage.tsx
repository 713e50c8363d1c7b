import { type CheckRecord, type IsoDay, namesAsWritten, problemInWords, type RoundView } from '@duskwatch/core';
import { useEffect, useState } from 'react';
import { shortDay } from '../../format/day.ts';
import type { OutboxEntry } from '../../sync/types.ts';
import { driveWords } from '../../text/drive.ts';
import { language } from '../../text/language.ts';
import { roundWords as w } from '../../text/round.ts';
import { localDay, trueMs } from '../shared/clock.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { countText } from '../shared/figures.ts';
import { ofRound } from '../shared/progress.ts';
import type { ToastMessage } from '../shared/Toast.tsx';
import { dayOf, isRefused, type Written } from '../shared/written.ts';
import type { RoundSearch } from './search.ts';

interface Props {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly view: RoundView | null;
  readonly go: (to: RoundSearch) => void;
  readonly tell: (told: ToastMessage) => void;
}

/** What this phone has written and the server has not taken: what waits, and what was refused and why. */
export function UnsentPage(props: Props) {
  const { state, device, go } = props;
  const { status, written } = state;
  if (!status) return null;
  const refused = written.filter(isRefused);
  const pending = state.entries.filter((entry) => entry.state === 'pending');
  const nothing = refused.length + pending.length + status.photos + status.ofOthers === 0;
  return (
    <main className="round-body unsent" id="page">
      <div className="round-title">
        <h1>{w.unsent.title}</h1>
        {nothing && <p>{w.unsent.none}</p>}
      </div>
      {refused.length > 0 && (
        <section aria-labelledby="refused">
          <h2 id="refused">{w.unsent.refusedTitle(refused.length)}</h2>
          <p className="hint">{w.unsent.refusedText}</p>
          <ul className="records">
            {refused.map((each) => (
              <Refused key={each.recordId} refused={each} {...props} />
            ))}
          </ul>
        </section>
      )}
      {pending.length > 0 && (
        <section aria-labelledby="waiting">
          <h2 id="waiting">{w.unsent.kept(pending.length)}</h2>
          <p className="hint">{w.unsent.waiting}</p>
          <ol className="records">
            {pending.map((entry) => (
              <li key={entry.place}>
                <strong>{nameOf(entry, written)}</strong>
                {entry.revision.kind === 'checks' && entry.revision.value !== null && (
                  <span>{countOf((entry as OutboxEntry<'checks'>).revision.value!)}</span>
                )}
              </li>
            ))}
          </ol>
        </section>
      )}
      {status.photos > 0 && <p>{w.unsent.photos(status.photos)}</p>}
      {status.ofOthers > 0 && <p>{w.unsent.others(status.ofOthers)}</p>}
      <Sending state={state} />
      <div className="round-foot">
        <button type="button" className="big" onClick={() => go({})}>
          {w.unsent.back}
        </button>
        {pending.length + status.photos > 0 && (
          <button type="button" className="big primary" aria-busy={status.sending} onClick={() => device.send()}>
            {status.sending ? w.unsent.sending : w.unsent.send}
          </button>
        )}
      </div>
    </main>
  );
}

function Refused({ refused, state, device, view, go, tell }: Props & { refused: Written }) {
  const entry = refused.entries.at(-1)!;
  const check = refused.kind === 'checks' ? (refused as Written<'checks'>) : null;
  const inRound = check !== null && state.round !== null && ofRound(state.round, state.written, 'checks').has(check.last.trapId);
  const stop = inRound && view?.stops.find(({ traps }) => traps.some(({ trapId }) => trapId === check.last.trapId));
  const trueDay = dayByTrueTime(refused, state);
  return (
    <li>
      <strong>{nameOf(entry, state.written)}</strong>
      {check?.value && <span>{countOf(check.value)}</span>}
      {entry.problems.map((problem) => {
        const said = problemInWords(problem, language, namesAsWritten);
        return (
          <p key={`${problem.got} ${problem.expected}`} className="caution" lang={said.language}>
            {w.unsent.problem(problem.got, said.expected)} {said.fix}
          </p>
        );
      })}
      <p className="round-actions">
        {trueDay !== null && (
          <button type="button" className="big primary" onClick={() => void device.redate(refused, trueDay)}>
            {driveWords.clock.redate(shortDay(trueDay))}
          </button>
        )}
        {stop && (
          <button type="button" className="big" onClick={() => go({ station: stop.station, trap: check!.last.trapId })}>
            {w.unsent.mend}
          </button>
        )}
        <button type="button" className="big" onClick={() => void device.retry(entry.revision.revisionId)}>
          {w.unsent.retry}
        </button>
        <button
          type="button"
          className="big"
          onClick={() => void device.discard(refused).then(() => tell({ text: w.unsent.discarded }))}
        >
          {w.unsent.discard}
        </button>
      </p>
    </li>
  );
}

/** The day on which it was really written, where a clock that was ahead wrote one to come; null where it wrote the right one. */
function dayByTrueTime(refused: Written, { clock }: DeviceState): IsoDay | null {
  const { problems, revision } = refused.entries.at(-1)!;
  if (problems.every(({ fault }) => fault?.kind !== 'future-day')) return null;
  const real = localDay(trueMs(clock, Date.parse(revision.at)));
  return real < dayOf(refused) ? real : localDay(trueMs(clock, Date.now()));
}

const countOf = (check: CheckRecord) => (check.targetCount === null ? countText(check) : w.unsent.count(countText(check)));

function Sending({ state }: { state: DeviceState }) {
  const { trouble, nextTryMs, clockSkewMs } = state.status!;
  const seconds = useSecondsUntil(nextTryMs);
  const skewMinutes = Math.round((clockSkewMs ?? 0) / 60_000);
  return (
    <p className="hint" role="status">
      {trouble && w.unsent.trouble[trouble]} {seconds !== null && w.unsent.nextTry(seconds)}{' '}
      {trouble === 'signed-out' && <a href="/sign-in">{w.unsent.signIn}</a>}{' '}
      {Math.abs(skewMinutes) >= 5 && w.unsent.clock(skewMinutes)}
    </p>
  );
}

function useSecondsUntil(ms: number | null): number | null {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    if (ms === null) return;
    const timer = setInterval(() => setNow(Date.now()), 1_000);
    return () => clearInterval(timer);
  }, [ms]);
  return ms === null ? null : Math.max(0, Math.ceil((ms - now) / 1_000));
}

function nameOf({ revision }: OutboxEntry, written: readonly Written[]): string {
  const record = written.find(({ recordId }) => recordId === revision.recordId);
  if (!record) return w.unsent.other;
  const name = recordName(record);
  return revision.value === null ? w.unsent.removed(name) : name;
}

function recordName({ kind, last }: Written): string {
  const value = last as Partial<Record<'trapId' | 'fieldId', string>>;
  const date = shortDay(dayOf({ kind, last }));
  if (kind === 'checks') return w.unsent.check(value.trapId!, date);
  if (kind === 'skips') return w.unsent.skip(value.trapId!, date);
  if (kind === 'lures') return w.unsent.lure(value.trapId!, date);
  if (kind === 'samples') return w.unsent.sample(value.fieldId!, date);
  if (kind === 'decisions') return w.unsent.decision(value.fieldId!, date);
  return w.unsent.stage(value.fieldId!, date);
}
