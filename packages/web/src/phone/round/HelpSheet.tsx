import type { RoundTrap } from '@duskwatch/core';
import { roundWords as w } from '../../text/round.ts';
import { visitWords as v } from '../../text/visit.ts';
import { capital, heightText, local } from '../shared/figures.ts';
import { Sheet } from '../shared/Sheet.tsx';
import { hasWingMark, WingMark } from './WingMark.tsx';

/** What tells the target from its look-alikes, with the moths still in hand. */
export function HelpSheet({ trap }: { readonly trap: RoundTrap }) {
  const live = trap.design === 'mesh-cone' || trap.design === 'wire-cone' || trap.design === 'bucket';
  return (
    <Sheet name={v.which} title={v.which} buttonClass="which">
      <h3>{w.help.target}</h3>
      <p>
        {capital(local(trap.insectName))}, <i>{trap.scientificName}</i>
      </p>
      {trap.marks && (
        <>
          <h3>{v.marks}</h3>
          <p>{local(trap.marks.note)}</p>
          {hasWingMark(trap.insect) && <WingMark insect={trap.insect} />}
          {trap.marks.standing === 'memory' && <p className="hint">{v.fromMemory}</p>}
        </>
      )}
      <h3>{w.help.notThese}</h3>
      {trap.lookAlikes.length === 0 && <p>{w.help.noLookAlikes}</p>}
      <dl>
        {trap.lookAlikes.map(({ insect, name, note }) => (
          <div key={name.en}>
            <dt>{capital(local(name))}</dt>
            <dd>
              {local(note)}
              {insect !== null && hasWingMark(insect) && hasWingMark(trap.insect) && <WingMark insect={insect} />}
            </dd>
          </div>
        ))}
      </dl>
      <p>{w.help.unsure}</p>
      {live && (
        <>
          <h3>{w.help.live}</h3>
          <p className="caution">{w.help.liveText}</p>
        </>
      )}
      <h3>{w.help.keep}</h3>
      {trap.heightM !== null && <p>{w.help.heightText(heightText(trap.heightM))}</p>}
      <p>{w.help.growth}</p>
    </Sheet>
  );
}
