import type { RoundStop, RoundTrap } from '@duskwatch/core';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { asOfferedNow, holdsSomething, missing } from '../../shared/check/unsaved-check.ts';
import { driveWords } from '../../text/drive.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import type { KeptDraft } from '../shared/kept.ts';
import { ofRound, type Progress } from '../shared/progress.ts';
import type { Written } from '../shared/written.ts';
import { typedText } from './StopRow.tsx';
import type { RoundSearch } from './search.ts';

interface Typed {
  readonly trap: RoundTrap;
  readonly stop: RoundStop;
  readonly kept: KeptDraft;
  /** The check that it corrects. */
  readonly correcting: Written<'checks'> | null;
}

/** What was put in at traps of the round and not saved, on whatever day. */
export function typedHere({ drafts, round, written }: DeviceState, { stops }: Progress): Typed[] {
  const checks = round ? ofRound(round, written, 'checks') : new Map<string, Written<'checks'>>();
  return stops.flatMap(({ stop, traps }) =>
    traps.flatMap(({ trap }) => {
      const kept = drafts[trap.trapId];
      return kept && holdsSomething(kept.draft) ? [{ trap, stop, kept, correcting: checks.get(trap.trapId) ?? null }] : [];
    }),
  );
}

interface Props {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly progress: Progress;
  /** Traps not seen to. */
  readonly open: number;
  readonly go: (to: RoundSearch) => void;
  readonly back: () => void;
}

/** The last question of a round: nothing that was typed is lost without a word. */
export function Ending({ state, device, progress, open, go, back }: Props) {
  const t = driveWords.typed;
  const [failed, setFailed] = useState(false);
  const typed = typedHere(state, progress);
  const whole = typed.filter(({ kept }) => missing(asOfferedNow(kept.draft)) === null);
  const saveAll = async () => {
    try {
      for (const { trap, stop, kept, correcting } of whole) {
        await device.save(asOfferedNow(kept.draft), { trap, stop, on: kept.on }, correcting);
      }
      await device.end();
    } catch {
      setFailed(true);
    }
  };
  const end = () => void device.end();
  return (
    <main className="round-body" id="page">
      <div className="round-title">
        <h1>{w.list.end}</h1>
        <p>{w.header.progress(progress.saved + progress.skipped, progress.total)}</p>
      </div>
      {open > 0 && <p>{w.list.endOpenHelp}</p>}
      {typed.length > 0 && (
        <section className="typed" aria-labelledby="typed">
          <h2 id="typed">{t.title(typed.length)}</h2>
          <ul>
            {typed.map(({ trap, stop, kept }) => (
              <li key={trap.trapId}>
                <span>
                  <b>{trap.trapId}</b> {t.of(typedText(kept)!, shortDay(kept.on))}
                </span>
                <button type="button" className="big" onClick={() => go({ station: stop.station, trap: trap.trapId })}>
                  {t.open}
                </button>
              </li>
            ))}
          </ul>
          <p className="hint">{whole.length < typed.length ? t.cannot : t.withoutHelp}</p>
        </section>
      )}
      <div className="round-foot stacked">
        <p className="problem" role="alert">
          {failed && w.trap.failed}
        </p>
        {whole.length > 0 && whole.length === typed.length && (
          <button type="button" className="big primary" onClick={() => void saveAll()}>
            {t.save(whole.length)}
          </button>
        )}
        <button type="button" className="big" onClick={back}>
          {w.list.cancel}
        </button>
        <button type="button" className={typed.length === 0 ? 'big primary' : 'big'} onClick={end}>
          {typed.length > 0 ? t.without : w.list.endOpen(open)}
        </button>
      </div>
    </main>
  );
}
