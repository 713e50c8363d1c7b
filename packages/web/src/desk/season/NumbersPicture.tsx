import type { TrapNumberRow, TrapNumbers } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { curveMonotoneX, line } from 'd3-shape';
import { percentText } from '../../format/number.ts';
import { seasonWords } from '../../text/season.ts';
import { Chart, type Margins, plotIn } from '../../ui/chart/Chart.tsx';
import { AcrossAxis, Dot, EndWords, HeightAxis, Level, Line } from '../../ui/chart/marks.tsx';

const HEIGHT = 168;
const MARGINS: Margins = { left: 48, right: 14, top: 16, foot: 24 };

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
  const most = Math.max(...rows.map(({ traps }) => traps));
  const rhythms = [...new Set(rows.map((row) => row.nightsBetweenChecks))];
  return (
    <div>
      <h3>{title}</h3>
      <Chart height={HEIGHT}>
        {(width) => {
          const plot = plotIn(width, HEIGHT, MARGINS);
          const x = scaleLinear().domain([1, most]).range([plot.left, plot.right]);
          const y = scaleLinear()
            .domain([0, Math.max(0.1, accepted ?? 0, ...rows.map(of))])
            .nice(4)
            .range([plot.bottom, plot.top]);
          const path = line<TrapNumberRow>()
            .x((row) => x(row.traps))
            .y((row) => y(of(row)))
            // Between whole traps it neither rises above nor falls below its dots.
            .curve(curveMonotoneX)
            .digits(1);
          const withRhythm = (each: number) => rows.filter((row) => row.nightsBetweenChecks === each);
          return (
            <>
              <HeightAxis plot={plot} y={y} ticks={y.ticks(4)} text={percentText} />
              <AcrossAxis
                y={HEIGHT - 7}
                ticks={Array.from({ length: most }, (_, index) => ({ x: x(index + 1), label: String(index + 1) }))}
              />
              {rhythms.map((each) => (
                <Line
                  key={each}
                  className={each === nights ? 'rhythm-line chosen' : 'rhythm-line'}
                  d={path(withRhythm(each)) ?? ''}
                />
              ))}
              {withRhythm(nights).map((row) => (
                <Dot key={row.traps} className={row.enough ? 'enough' : 'short'} x={x(row.traps)} y={y(of(row))} />
              ))}
              {accepted !== null && (
                <>
                  <Level plot={plot} y={y(accepted)} />
                  <EndWords words={[{ text: w.accepted(percentText(accepted)), y: y(accepted) }]} plot={plot} />
                </>
              )}
            </>
          );
        }}
      </Chart>
    </div>
  );
}
