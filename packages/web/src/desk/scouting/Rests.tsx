import type { ScoutingPlan } from '@duskwatch/core';
import { localName } from '../../text/names.ts';
import { scoutingWords } from '../../text/scouting.ts';
import { useWording } from '../../text/wording.ts';
import { fineNumber } from './figures.ts';

/** The figures that neither the rule nor the reader gave. */
export function Rests({ plan }: { plan: ScoutingPlan }) {
  const w = scoutingWords.plan;
  const wording = useWording();
  const c = w.restsColumns;
  return (
    <div className="plan-rests">
      <h2>{w.rests(plan.assumed.length)}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="behind-scroll" aria-label={w.rests(plan.assumed.length)} tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col" className="number">
                {c.value}
              </th>
              <th scope="col">{c.unit}</th>
              <th scope="col">{c.why}</th>
              <th scope="col">{c.standing}</th>
            </tr>
          </thead>
          <tbody>
            {plan.assumed.map(({ id, value, unit, why, standing }) => (
              <tr key={id}>
                <td className="number">{fineNumber(value)}</td>
                <td>{localName(unit)}</td>
                <td>{localName(why)}</td>
                <td>{wording.standing[standing]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <h3>{w.basis}</h3>
      <p className="key">{w.method}</p>
    </div>
  );
}
