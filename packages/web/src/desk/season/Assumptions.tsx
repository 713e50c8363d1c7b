import type { SeasonView } from '@duskwatch/core';
import { rateText } from '../../format/number.ts';
import { localName } from '../../text/names.ts';
import { seasonWords } from '../../text/season.ts';
import { Cited } from '../../ui/Cited.tsx';
import { Scroll } from './Scroll.tsx';

/** Every figure that nobody has published and the plan cannot do without. */
export function Assumptions({ view }: { view: SeasonView }) {
  const w = seasonWords.plan;
  return (
    <details className="behind">
      <summary>{w.sources}</summary>
      <Scroll label={w.sources}>
        <table className="figures season-assumptions">
          <thead>
            <tr>
              <th scope="col">{w.assumption}</th>
              <th scope="col">{w.value}</th>
              <th scope="col">{w.stands}</th>
            </tr>
          </thead>
          <tbody>
            {view.assumptions.map(({ id, value, unit, why, source, standing, written }) => (
              <tr key={id}>
                <th scope="row">{localName(why)}</th>
                <td>
                  {rateText(written ?? value)} {localName(unit)}
                  {written !== null && <small>{w.written(rateText(written))}</small>}
                </td>
                <td>
                  <Cited source={source} standing={standing} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
