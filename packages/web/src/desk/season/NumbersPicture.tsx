import type { TrapNumberRow, TrapNumbers } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { percentText } from '../../format/number.ts';
import { seasonWords } from '../../text/season.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';

const HEIGHT = 168;
const TOP = 12;
const FOOT = 24;
const LEFT = 48;
const RIGHT = 14;

/** Three small drawings side by side: what a number of traps risks and how sharp it is, the chosen rhythm among the others. */
export function NumbersPicture({ numbers, nights }: { numbers: TrapNumbers; nights: number }) {
  const w = seasonWords.numbers;
  const { aboveShare, belowShare, riskMissed, riskFalse } = numbers;
  const panels = [
    { title: w.missed(percentText(aboveShare)), of: (row: TrapNumberRow) => row.missed, accepted: riskMissed },
    { title: w.falseAlarm(percentText(belowShare)), of: (row: TrapNumberRow) => row.falseAlarm, accepted: riskFalse },
    { title: w.precision, of: (row: TrapNumberRow) => row.precision, accepted: null },
  ];
  return (
    <div className="numbers-picture">
      {panels.map((panel) => (
        <PanelDrawing key={panel.title} {...panel} rows={numbers.rows} nights={nights} />
      ))}
    </div>
  );
}

function PanelDrawing(props: {
  title: string;
  of: (row: TrapNumberRow) => number;
  accepted: number | null;
  rows: readonly TrapNumberRow[];
  nights: number;
}) {
  const { title, of, accepted, rows, nights } = props;
  const w = seasonWords.numbers;
  const [ref, width] = useWidth<HTMLDivElement>();
  const most = Math.max(...rows.map(({ traps }) => traps));
  const x = scaleLinear()
    .domain([1, most])
    .range([LEFT, Math.max(LEFT + 1, width - RIGHT)]);
  const y = scaleLinear()
    .domain([0, Math.max(0.1, accepted ?? 0, ...rows.map(of))])
    .nice(4)
    .range([HEIGHT - FOOT, TOP]);
  const rhythms = [...new Set(rows.map((row) => row.nightsBetweenChecks))];
  const path = (each: number) =>
    rows
      .filter((row) => row.nightsBetweenChecks === each)
      .map((row, index) => `${index === 0 ? 'M' : 'L'}${x(row.traps).toFixed(1)} ${y(of(row)).toFixed(1)}`)
      .join('');
  const chosen = rows.filter((row) => row.nightsBetweenChecks === nights);
  return (
    <div>
      <h3>{title}</h3>
      <div ref={ref} style={{ height: HEIGHT }}>
        {width > 0 && (
          <svg width={width} height={HEIGHT} aria-hidden="true">
            {y.ticks(4).map((tick) => (
              <g key={tick}>
                <line className={tick === 0 ? 'ground' : 'grid'} x1={LEFT} x2={width - RIGHT} y1={y(tick)} y2={y(tick)} />
                <text className="scale" x={LEFT - 6} y={y(tick) + 4} textAnchor="end">
                  {percentText(tick)}
                </text>
              </g>
            ))}
            {Array.from({ length: most }, (_, index) => index + 1).map((traps) => (
              <text key={traps} className="scale" x={x(traps)} y={HEIGHT - 7} textAnchor="middle">
                {traps}
              </text>
            ))}
            {rhythms.map((each) => (
              <path key={each} className={each === nights ? 'rhythm-line chosen' : 'rhythm-line'} d={path(each)} />
            ))}
            {chosen.map((row) => (
              <circle key={row.traps} className={row.enough ? 'dot enough' : 'dot'} cx={x(row.traps)} cy={y(of(row))} r={3.5} />
            ))}
            {accepted !== null && (
              <g>
                <line className="accepted" x1={LEFT} x2={width - RIGHT} y1={y(accepted)} y2={y(accepted)} />
                <text
                  className="accepted-word"
                  x={width - RIGHT}
                  y={y(accepted) < TOP + 14 ? y(accepted) + 14 : y(accepted) - 4}
                  textAnchor="end"
                >
                  {w.accepted(percentText(accepted))}
                </text>
              </g>
            )}
          </svg>
        )}
      </div>
    </div>
  );
}
