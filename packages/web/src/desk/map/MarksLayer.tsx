/** What stands on the ground: fields by their verbs, or stations by their rates, each joined to its true place. */
import { useMemo } from 'react';
import { useLengthUnit } from '../../browser/preferences.ts';
import { shortDay } from '../../format/day.ts';
import { rateText } from '../../format/number.ts';
import { VerbGlyph } from '../../shared/advice/VerbMark.tsx';
import { mapWords as w } from '../../text/map.ts';
import { Graticule } from './Graticule.tsx';
import type { GroundNow } from './ground.ts';
import { type FarmMark, farmMarks, fieldKey, rateGroups, STATION, stationKey, verbGroups, type Wordings } from './groups.ts';
import { layOut, type Placed, WORD_GAP } from './layout.ts';
import { type FieldMark, HOLLOW_RADIUS, radiusOf, type StationMark, shortName, tells } from './marks.ts';
import { scaleBarIn } from './scale-bar.ts';

export interface Pointed {
  readonly station?: string | undefined;
  readonly field?: string | undefined;
}

export interface MarksLayerProps {
  readonly now: GroundNow;
  readonly fields: readonly FieldMark[];
  readonly stations: readonly StationMark[];
  readonly highest: number;
  readonly rates: boolean;
  readonly chosen: Pointed;
  readonly choose: (pointed: Pointed) => void;
  readonly label: string;
}

/** Beside a field's name: how late it is, or by when. */
export function whenText({ verb, by, daysLate }: FieldMark): string {
  if (daysLate > 0) return w.late(daysLate);
  return by !== null && (verb === 'decide' || verb === 'scout') ? w.by(shortDay(by)) : '';
}

/** On a map this narrow, names stand near or not at all. */
const SMALL_MAP = 600;
const NEAR = 24;
/** More farms than these stand as one mark each there, until one looks nearer. */
const FEW_FARMS = 6;

const wordings: Wordings = {
  field: (mark) => `${mark.name}  ${whenText(mark)}`,
  station: ({ station, perNight }) => (perNight === null ? station : `${rateText(perNight)}  ${station}`),
  farm: ({ farm, fields }) => (fields.length > 1 ? `${farm}  ${w.fields(fields.length)}` : farm),
};

export function MarksLayer(props: MarksLayerProps) {
  const { now, fields, stations, highest, rates, chosen, choose, label } = props;
  const { width, height, project, metresPerPixel } = now;
  const farms = useMemo(() => farmMarks(fields, stations), [fields, stations]);
  const whole = [...fields, ...stations].every((mark) => {
    const [x, y] = project(mark);
    return x >= 0 && x <= width && y >= 0 && y <= height;
  });
  // Marks move with their places, and are laid out anew when the scale is another by a quarter of a zoom.
  const scale = Math.round(4 * Math.log2(metresPerPixel));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ground's own functions change with each move of it
  const laid = useMemo(() => {
    const bounds = whole ? { left: 4, right: width - 4, top: 40, bottom: height - 24 } : null;
    const groups = rates
      ? rateGroups(farms, highest, project, wordings)
      : verbGroups(farms, project, wordings, whole && width < SMALL_MAP && farms.length > FEW_FARMS);
    const from = new Map(groups.map(({ key, place }) => [key, { place, at: project(place) }]));
    const ways = new Map(groups.map((group) => [group.key, group.ways.length]));
    return { placed: layOut(groups, bounds, width < SMALL_MAP ? NEAR : undefined), from, ways };
  }, [farms, rates, highest, scale, width, height, whole]);
  const moved = (group: string, spot: Placed | null | undefined): Placed | null => {
    const from = laid.from.get(group);
    if (!spot || !from) return null;
    const [x, y] = project(from.place);
    return { ...spot, x: spot.x + x - from.at[0], y: spot.y + y - from.at[1] };
  };
  const spot = (key: string, farm: string): Placed | null =>
    moved(farm, laid.placed.get(farm)?.items.get(key)) ?? moved(key, laid.placed.get(key)?.items.get(key));
  const inSight = ({ x, y }: Placed) => x > -200 && x < width + 200 && y > -40 && y < height + 40;
  const [unit] = useLengthUnit();
  const bar = scaleBarIn(unit, metresPerPixel, Math.min(140, width / 4));
  return (
    <svg className="marks" width={width} height={height} role="img" aria-label={label}>
      {now.plain && <Graticule now={now} />}
      {farms.map((farm) => {
        const own = laid.placed.get(farm.key);
        const alone = `${farm.key}|name`;
        const name = moved(farm.key, own?.heading) ?? moved(alone, laid.placed.get(alone)?.items.get(alone));
        const asOne = spot(farm.key, farm.key);
        return (
          <g key={farm.key}>
            {name && (
              <text className="farm-name" x={name.x} y={name.y + 4} textAnchor={name.anchor}>
                {farm.farm}
              </text>
            )}
            {farm.stations.map((mark) => {
              const at = spot(stationKey(mark), farm.key) ?? (chosen.station === mark.key ? asItLies(project(mark)) : null);
              if (!at) return <StationDot key={mark.key} mark={mark} at={project(mark)} />;
              if (!inSight(at)) return null;
              return (
                <Station
                  key={mark.key}
                  mark={mark}
                  at={at}
                  true={project(mark)}
                  radius={rates ? radiusOf(mark.perNight, highest) : STATION}
                  rates={rates}
                  chosen={chosen.station === mark.key}
                  choose={() => choose({ station: mark.key })}
                />
              );
            })}
            {asOne && inSight(asOne) && (
              <Farm
                farm={farm}
                at={asOne}
                choose={choose}
                bare={own?.items.get(farm.key) !== undefined && own.way === laid.ways.get(farm.key)! - 1}
              />
            )}
            {!rates &&
              farm.fields.map((mark) => {
                const at = spot(fieldKey(mark), farm.key) ?? (chosen.field === mark.fieldId ? asItLies(project(mark)) : null);
                if (!at || !inSight(at)) return null;
                return (
                  <Field
                    key={mark.fieldId}
                    mark={mark}
                    at={at}
                    true={project(mark)}
                    chosen={chosen.field === mark.fieldId}
                    choose={() => choose({ field: mark.fieldId })}
                  />
                );
              })}
          </g>
        );
      })}
      <g className="scale-bar" transform={`translate(${width - bar.pixels - 16} ${height - 28})`}>
        <path d={`M0,-5V0H${bar.pixels}V-5`} />
        <text x={bar.pixels / 2} y={-5} textAnchor="middle">
          {bar.text}
        </text>
      </g>
      <g className="north" transform={width < SMALL_MAP ? `translate(24 ${height - 40})` : `translate(${width - 32} 90)`}>
        <path d="M0,12V-10M-4,-4L0,-11L4,-4" />
        <text y={-15} textAnchor="middle">
          {w.north}
        </text>
      </g>
    </svg>
  );
}

type XY = readonly [number, number];

/** What was pointed at is seen also where there is no room for the marks of its farm. */
const asItLies = ([x, y]: XY): Placed => ({ x, y, anchor: 'start' });

/** From the true place to the mark that stands aside. */
function Leader({ from, to, reach }: { from: XY; to: Placed; reach: number }) {
  const [dx, dy] = [to.x - from[0], to.y - from[1]];
  const long = Math.hypot(dx, dy);
  if (long <= reach + 3) return null;
  const part = (long - reach) / long;
  return <line className="leader" x1={from[0]} y1={from[1]} x2={from[0] + dx * part} y2={from[1] + dy * part} />;
}

function Field(props: { mark: FieldMark; at: Placed; true: XY; chosen: boolean; choose: () => void }) {
  const { mark, at, chosen, choose } = props;
  const half = mark.verb === 'none' ? 3 : 10;
  const when = whenText(mark);
  const word = (half + WORD_GAP) * (at.anchor === 'start' ? 1 : -1);
  return (
    // Pointers only: the panel and the table hold the same fields for keys and readers.
    // biome-ignore lint/a11y/noStaticElementInteractions: see the line above
    <g className={`field-mark verb-${mark.verb}${chosen ? ' chosen' : ''}`} onClick={choose}>
      <Leader from={props.true} to={at} reach={half} />
      <circle className="true-place" cx={props.true[0]} cy={props.true[1]} r={2} />
      <g transform={`translate(${at.x} ${at.y})`}>
        <circle className="reach" r={14} />
        {chosen && <circle className="choice" r={14} />}
        <VerbGlyph verb={mark.verb} />
        <text className="field-word" x={word} y={4} textAnchor={at.anchor}>
          {mark.name}
          {when && (
            <tspan className={mark.daysLate > 0 ? 'late' : 'when'} dx={6}>
              {when}
            </tspan>
          )}
        </text>
      </g>
    </g>
  );
}

function Station(props: {
  mark: StationMark;
  at: Placed;
  true: XY;
  radius: number;
  rates: boolean;
  chosen: boolean;
  choose: () => void;
}) {
  const { mark, at, radius, rates, chosen, choose } = props;
  const silent = rates ? mark.perNight === null : !mark.traps.some(tells);
  const word = (radius + WORD_GAP) * (at.anchor === 'start' ? 1 : -1);
  const classes = ['station-mark', silent && 'silent', mark.due && 'due-now', rates && 'by-rate', chosen && 'chosen'];
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointers only, as above
    <g className={classes.filter(Boolean).join(' ')} onClick={choose}>
      <Leader from={props.true} to={at} reach={radius} />
      <circle className="true-place" cx={props.true[0]} cy={props.true[1]} r={2} />
      <g transform={`translate(${at.x} ${at.y})`}>
        <circle className="reach" r={Math.max(radius + 3, 12)} />
        {chosen && <circle className="choice" r={radius + 4} />}
        <circle className="station-disc" r={silent && rates ? HOLLOW_RADIUS : radius} />
        {rates ? (
          <text className="rate-word" x={word} y={4} textAnchor={at.anchor}>
            {mark.perNight !== null && <tspan className="rate-figure">{rateText(mark.perNight)}</tspan>}
            <tspan dx={mark.perNight === null ? 0 : 6}>{mark.station}</tspan>
          </text>
        ) : (
          <text className="station-word" y={4} textAnchor="middle">
            {shortName(mark.station)}
          </text>
        )}
        <title>{mark.station}</title>
      </g>
    </g>
  );
}

/** Where there is no room for the marks of a farm's stations: only where each is. */
const StationDot = ({ mark, at: [x, y] }: { mark: StationMark; at: XY }) => (
  <g className="station-mark">
    <g transform={`translate(${x} ${y})`}>
      <circle className="true-place" r={2.5} />
      <title>{mark.station}</title>
    </g>
  </g>
);

function Farm(props: { farm: FarmMark; at: Placed; bare: boolean; choose: (pointed: Pointed) => void }) {
  const { farm, at, bare, choose } = props;
  const first = farm.fields[0];
  const word = (10 + WORD_GAP) * (at.anchor === 'start' ? 1 : -1);
  const press = () => (first ? choose({ field: first.fieldId }) : farm.stations[0] && choose({ station: farm.stations[0].key }));
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointers only, as above
    <g className={`farm-mark verb-${farm.verb ?? 'none'}`} transform={`translate(${at.x} ${at.y})`} onClick={press}>
      <circle className="reach" r={14} />
      <VerbGlyph verb={farm.verb ?? 'none'} />
      {!bare && (
        <text className="farm-name" x={word} y={4} textAnchor={at.anchor}>
          {farm.farm}
          {farm.fields.length > 1 && (
            <tspan className="when" dx={6}>
              {w.fields(farm.fields.length)}
            </tspan>
          )}
        </text>
      )}
      <title>{farm.farm}</title>
    </g>
  );
}
