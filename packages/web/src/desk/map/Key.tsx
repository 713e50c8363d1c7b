import { rateText } from '../../format/number.ts';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { VERBS } from '../../shared/advice/verbs.ts';
import { mapWords } from '../../text/map.ts';
import { useWording } from '../../text/wording.ts';
import { STATION } from './groups.ts';
import { type FieldMark, HOLLOW_RADIUS, legendRates, radiusOf } from './marks.ts';

/** What each mark stands for; of the verbs, also how many fields there are of each. */
export function VerbKey({ fields }: { fields: readonly FieldMark[] }) {
  const w = mapWords.key;
  const wording = useWording();
  return (
    <ul className="legend map-key" aria-label={w.title}>
      {VERBS.filter((verb) => verb !== 'none').map((verb) => (
        <li key={verb}>
          <VerbMark verb={verb} /> {wording.verb[verb]} {fields.filter((field) => field.verb === verb).length}
        </li>
      ))}
      <li>{w.ofFields}</li>
      <Station className="plain" says={w.station} />
      <Station className="due-now" says={w.due} />
      <Station className="silent" says={w.silent} />
      <li className="map-note">{mapWords.local}</li>
    </ul>
  );
}

/** Round rates in figures, as large as they are drawn. */
export function RateKey({ highest }: { highest: number }) {
  const w = mapWords.key;
  return (
    <ul className="legend map-key" aria-label={w.title}>
      {[0, ...legendRates(highest)].map((rate) => {
        const radius = radiusOf(rate, highest);
        return (
          <li key={rate}>
            <svg width={2 * radius + 4} height={2 * radius + 4} aria-hidden="true" className="marks-key">
              <g className="by-rate" transform={`translate(${radius + 2} ${radius + 2})`}>
                <circle className="station-disc" r={radius} />
              </g>
            </svg>
            {rate === 0 ? w.none : w.rate(rateText(rate))}
          </li>
        );
      })}
      <Station className="by-rate silent" radius={HOLLOW_RADIUS} says={w.silent} />
      <Station className="by-rate due-now" radius={HOLLOW_RADIUS} says={w.due} />
      <li className="map-note">{mapWords.local}</li>
    </ul>
  );
}

function Station({ className, says, radius = STATION }: { className: string; says: string; radius?: number }) {
  return (
    <li>
      <svg width={24} height={24} aria-hidden="true" className="marks-key">
        <g className={className} transform="translate(12 12)">
          <circle className="station-disc" r={radius} />
        </g>
      </svg>
      {says}
    </li>
  );
}
