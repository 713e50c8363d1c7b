/** The map's own column: what was pointed at, or what presses most; stations are walked one by one. */
import { day, type WeekField, type WeekView } from '@duskwatch/core';
import { useQueries } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { trapQuery } from '../../shared/traps/queries.ts';
import { sharedTop, TrapLine } from '../../shared/traps/TrapLine.tsx';
import { dueText, lureText, rateOf, visitText } from '../../shared/traps/words.ts';
import { mapWords } from '../../text/map.ts';
import { cropText, localName, shortReason } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { type Pointed, whenText } from './MarksLayer.tsx';
import type { FieldMark, StationMark } from './marks.ts';

const w = mapWords.panel;
const SHOWN = 9;

export interface MapPanelProps {
  readonly week: WeekView;
  readonly fields: readonly FieldMark[];
  /** The most pressing first. */
  readonly stations: readonly StationMark[];
  readonly chosen: Pointed;
  readonly choose: (pointed: Pointed) => void;
  readonly on: string | undefined;
}

export function MapPanel(props: MapPanelProps) {
  const { week, fields, stations, chosen, choose, on } = props;
  const place = stations.findIndex(({ key }) => key === chosen.station);
  const station = stations[place];
  const field = week.fields.find(({ fieldId }) => fieldId === chosen.field);
  const walk = (step: number) => {
    const next = stations[(Math.max(place, step > 0 ? -1 : 0) + step + stations.length) % stations.length];
    if (next) choose({ station: next.key });
  };
  return (
    <section className="map-panel" aria-label={w.title}>
      {stations.length > 0 && (
        <div className="walk">
          <button type="button" className="button" aria-label={w.before} onClick={() => walk(-1)}>
            ‹
          </button>
          <span>{station ? w.at(place + 1, stations.length) : w.of(stations.length)}</span>
          <button type="button" className="button" aria-label={w.next} onClick={() => walk(1)}>
            ›
          </button>
        </div>
      )}
      {station && <OneStation mark={station} week={week} on={on} />}
      {field && <OneField field={field} week={week} stations={stations} choose={choose} on={on} />}
      {!station && !field && (
        <>
          {(chosen.station ?? chosen.field) !== undefined && <p role="status">{w.gone}</p>}
          <Pressing fields={fields} choose={choose} />
        </>
      )}
    </section>
  );
}

function Pressing({ fields, choose }: { fields: readonly FieldMark[]; choose: (pointed: Pointed) => void }) {
  const wording = useWording();
  const pressing = fields.filter(({ verb }) => verb !== 'none' && verb !== 'watch');
  return (
    <>
      <h2>{w.pressing}</h2>
      {pressing.length === 0 && <p className="basis">{w.nothing}</p>}
      <ul className="pressing">
        {pressing.slice(0, SHOWN).map((mark) => (
          <li key={mark.fieldId}>
            <button type="button" onClick={() => choose({ field: mark.fieldId })}>
              <VerbMark verb={mark.verb} />
              <span>
                <b>{mark.name}</b> <small>{mark.farm}</small>
                <br />
                <span className={`verb-${mark.verb} ${mark.daysLate > 0 ? 'overdue' : 'when'}`}>
                  {[wording.verb[mark.verb], whenText(mark)].filter(Boolean).join(' ')}
                </span>
              </span>
            </button>
          </li>
        ))}
      </ul>
      {pressing.length > SHOWN && <p className="basis">{w.more(pressing.length - SHOWN)}</p>}
    </>
  );
}

/** What a field says of one insect: its mark, the verb, and the date or the reason. */
function Says({ field, column }: { field: WeekField; column: number }) {
  const wording = useWording();
  const { advice } = field.cells[column]!;
  const { verb } = advice;
  const said = verb === 'none' ? shortReason(advice.reason) : (wording.when(advice) ?? shortReason(advice.reason));
  return (
    <>
      {verb !== 'none' && <b className="verb-word">{wording.verb[verb]}</b>} {said}
    </>
  );
}

function OneStation({ mark, week, on }: { mark: StationMark; week: WeekView; on: string | undefined }) {
  const wording = useWording();
  const read = useQueries({ queries: mark.traps.map(({ trapId }) => trapQuery(trapId, on)) });
  const views = read.flatMap(({ data }) => data ?? []);
  const starts = views.flatMap(({ chart: { points } }) => (points[0] ? [day(points[0].from)] : []));
  return (
    <>
      <h2>{mark.station}</h2>
      {mark.farm !== '' && <p className="basis">{mark.farm}</p>}
      <ul className="station-traps">
        {mark.traps.map((trap) => {
          const column = week.insects.findIndex(({ id }) => id === trap.insect.id);
          return (
            <li key={trap.trapId}>
              <h3>
                {localName(trap.insect.commonName)} <small className="trap-design">{wording.design[trap.design]}</small>
              </h3>
              {views
                .filter(({ trapId, chart }) => trapId === trap.trapId && chart.points.length > 0)
                .map((view) => (
                  <TrapLine
                    key={view.trapId}
                    trap={view}
                    from={Math.min(...starts)}
                    top={sharedTop(views.filter(({ design }) => design === view.design))}
                  />
                ))}
              {trap.informs.length === 0 && <p className="basis">{w.informsNone}</p>}
              {trap.informs.map(({ fieldId, name }) => {
                const field = week.fields.find((each) => each.fieldId === fieldId);
                if (!field || column < 0) return null;
                const { verb } = field.cells[column]!.advice;
                return (
                  <p key={fieldId} className={`informs verb-${verb}`}>
                    <VerbMark verb={verb} />
                    <span>
                      <Link to="/fields/$fieldId" params={{ fieldId }} search={{ on }} hash={trap.insect.id}>
                        {name}
                      </Link>{' '}
                      <Says field={field} column={column} />
                    </span>
                  </p>
                );
              })}
              <dl>
                <dt>{w.rate}</dt>
                <dd>{rateOf(trap)}</dd>
                <dt>{w.last}</dt>
                <dd>{visitText(trap, week.on, wording.condition)}</dd>
                <dt>{w.check}</dt>
                <dd>{dueText(trap, week.on)}</dd>
                <dt>{w.lure}</dt>
                <dd>{lureText(trap)}</dd>
              </dl>
              <Link to="/traps/$trapId" params={{ trapId: trap.trapId }} search={{ on }} className="open">
                {w.openTrap(trap.trapId)}
              </Link>
            </li>
          );
        })}
      </ul>
    </>
  );
}

function OneField(props: {
  field: WeekField;
  week: WeekView;
  stations: readonly StationMark[];
  choose: (pointed: Pointed) => void;
  on: string | undefined;
}) {
  const { field, week, stations, choose, on } = props;
  const own = stations.filter(({ traps }) =>
    traps.some(({ informs }) => informs.some(({ fieldId }) => fieldId === field.fieldId)),
  );
  return (
    <>
      <h2>{field.name}</h2>
      <p className="basis">
        {field.farm}, {cropText(field)}
      </p>
      {week.insects.map((insect, column) => {
        const { verb } = field.cells[column]!.advice;
        return (
          <p key={insect.id} className={`informs verb-${verb}`}>
            <VerbMark verb={verb} />
            <span>
              <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }} hash={insect.id}>
                {localName(insect.commonName)}
              </Link>{' '}
              <Says field={field} column={column} />
            </span>
          </p>
        );
      })}
      <h3>{w.stations}</h3>
      {own.length === 0 ? (
        <p className="basis">{w.noStations}</p>
      ) : (
        <p className="own-stations">
          {own.map(({ key, station }) => (
            <button key={key} type="button" className="button" onClick={() => choose({ station: key })}>
              {station}
            </button>
          ))}
        </p>
      )}
      <p>
        <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }} className="open">
          {w.openField}
        </Link>
      </p>
    </>
  );
}
