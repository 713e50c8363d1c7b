import type { RoundView, SkipReason } from '@duskwatch/core';
import { useState } from 'react';
import { dayText } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import { nextPlace } from '../shared/progress.ts';
import { Sign } from '../shared/Sign.tsx';
import type { StopProps } from './stop.ts';
import { TrapPage } from './TrapPage.tsx';

/** Stations whose warning was read, as long as the app stays open: after a reload it is shown again. */
const warned = new Set<string>();

export function StopPage(props: StopProps & { readonly view: RoundView }) {
  const { at, device, progress, trap, go, tell } = props;
  const { station } = at.stop;
  const [open, setOpen] = useState(warned.has(station));
  const keepOut = at.stop.fields.filter((field) => field.keepOut.length > 0);

  const skip = async (trapIds: readonly string[], reason: SkipReason) => {
    const left = progress.stops.map((each) => ({
      ...each,
      traps: each.traps.filter((one) => !trapIds.includes(one.trap.trapId)),
    }));
    const next = nextPlace({ ...progress, stops: left }, { station, trapId: trap.trapId });
    const takeBack = await device.skip(trapIds, reason);
    go(next ? { station: next.station, trap: next.trapId } : {});
    const undo = () => void takeBack().then(() => go({ station, trap: trap.trapId }));
    tell({
      text: w.trap.skipKept(trapIds.length === 1 ? trapIds[0]! : station, w.skipSheet.reasons[reason]),
      action: { name: w.trap.undo, run: undo },
    });
  };
  const openHere = at.traps.filter(({ state }) => state.kind === 'open').map((each) => each.trap.trapId);

  if (keepOut.length === 0 || open) return <TrapPage {...props} skip={skip} openHere={openHere} />;
  return (
    <main className="round-body keep-out" id="page">
      <div className="keep-out-sign">
        <Sign />
        <h1>{w.keepOut.title}</h1>
        <p>{w.keepOut.notOver}</p>
      </div>
      <p className="keep-out-station">{station}</p>
      {keepOut.map((field) => (
        <section key={field.fieldId}>
          <h2>{field.name}</h2>
          {field.keepOut.map((each) => (
            <p key={`${each.product} ${each.until}`}>
              <strong>{w.keepOut.until(dayText(each.until))}</strong>
              <br />
              {w.keepOut.by(each.product, each.hours)}
            </p>
          ))}
        </section>
      ))}
      <p>{w.keepOut.text}</p>
      <div className="round-foot stacked">
        <button type="button" className="big primary" onClick={() => void skip(openHere, 'keep-out')}>
          {w.keepOut.skip}
        </button>
        <button
          type="button"
          className="big"
          onClick={() => {
            warned.add(station);
            setOpen(true);
          }}
        >
          {w.keepOut.outside}
        </button>
      </div>
    </main>
  );
}
