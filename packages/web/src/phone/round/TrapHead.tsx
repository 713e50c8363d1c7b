import type { ReactNode } from 'react';
import { shortDay } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import { visitWords as v } from '../../text/visit.ts';
import { capital, countText, shortName } from '../shared/figures.ts';
import { keepsAlive } from '../shared/take-along.ts';
import { ClockNote } from './ClockNote.tsx';
import { dueText } from './DueWords.tsx';
import { HelpSheet } from './HelpSheet.tsx';
import type { StopProps } from './stop.ts';
import { Way } from './Way.tsx';

/** The insect is the trap's name; its code is for labels and doubt. */
export function TrapHead(props: StopProps & { readonly lure: ReactNode }) {
  const { at, trap, on, go, state, progress, lure } = props;
  const all = [...at.traps.map((each) => each.trap), ...at.others];
  const asked = at.traps.some((each) => each.trap.trapId === trap.trapId);
  const arrived = at.traps.some((each) => each.state.kind !== 'open');
  return (
    <div className="round-title trap-title">
      <div className="trap-name">
        <h1>{capital(shortName(trap.insectName))}</h1>
        <HelpSheet trap={trap} />
      </div>
      <div className="trap-name">
        <p className="trap-facts">
          <b>{at.stop.station}</b> · <span className="trap-id">{trap.trapId}</span> · {w.trap.design[trap.design]}
          {at.stop.fields.length > 0 && ` · ${at.stop.fields.map(({ name }) => name).join(', ')}`}
          {!asked && ` · ${w.trap.notDue(shortDay(trap.checkDue))}`}
        </p>
        {lure}
      </div>
      <ClockNote state={state} on={on} />
      {trap.doubt && <p className="trap-doubt">{capital(dueText(trap.doubt))}</p>}
      {!arrived && <Way to={at.stop} progress={progress} state={state} brief />}
      {all.length > 1 && <TrapTabs {...{ all, at, trap, go }} />}
      {keepsAlive(trap) && <p className="live-moths">{w.trap.liveMoths}</p>}
    </div>
  );
}

type Tabs = Pick<StopProps, 'at' | 'trap' | 'go'> & { readonly all: readonly StopProps['trap'][] };

/** The other traps of the station, by their insects; by their codes where two are for the same. */
function TrapTabs({ all, at, trap, go }: Tabs) {
  const alike = (insect: string) => all.filter((each) => each.insect === insect).length > 1;
  const stateOf = (trapId: string) => at.traps.find((each) => each.trap.trapId === trapId)?.state ?? null;
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
            {alike(each.insect) ? each.trapId : capital(shortName(each.insectName))}
            <small>
              {state?.kind === 'saved'
                ? countText(state.check)
                : state?.kind === 'skipped'
                  ? w.skipSheet.reasons[state.skip.reason]
                  : state
                    ? v.here(all.indexOf(each) + 1, all.length)
                    : w.list.notDue}
            </small>
            {!alike(each.insect) && <span className="unseen">, {each.trapId}</span>}
          </button>
        );
      })}
    </nav>
  );
}
