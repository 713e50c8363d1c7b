import type { IsoDay, LureLesson } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { countText, percentText, rateText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { reviewWords } from '../../text/review.ts';
import { Failure } from '../../ui/Failure.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';
import { CurvePlot } from './CurvePlot.tsx';
import { lessonsQuery } from './queries.ts';
import { NotYet, Working } from './Working.tsx';

const w = reviewWords.lures;

export function LuresPart({ on }: { on: IsoDay | undefined }) {
  const { data, error, refetch } = useQuery(lessonsQuery(on));
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <Working />;
  return (
    <>
      <p className="lead">{w.lead}</p>
      {data.lures.length === 0 && <p className="not-yet">{reviewWords.empty.text}</p>}
      <div className="lessons">
        {data.lures.map((lesson) => (
          <Lesson key={lesson.insect} lesson={lesson} />
        ))}
      </div>
      {data.lures.length > 0 && <p className="key">{reviewWords.level(percentText(data.level))}</p>}
    </>
  );
}

/** `−5 %`, `+12 %`: the sign is the message. */
function changeText(factor: number): string {
  const change = Math.round(100 * Math.abs(factor - 1)) / 100;
  return change === 0 ? percentText(0) : `${factor < 1 ? '−' : '+'}${percentText(change)}`;
}

function Lesson({ lesson: { insect, learned, used } }: { lesson: LureLesson }) {
  const title = insectName(insect);
  return (
    <section className="lesson">
      <h2>{title}</h2>
      {learned.known ? (
        <Decay title={title} used={used} decay={learned} />
      ) : (
        <NotYet why={w.reasons[learned.reason]} figures={learned.figures} />
      )}
    </section>
  );
}

function Decay(props: { title: string; used: number; decay: Extract<LureLesson['learned'], { known: true }> }) {
  const { title, used, decay } = props;
  const { perWeek, halfLifeDays: half, curve, weakens, oldestDays } = decay;
  const rises = perWeek.low !== null && perWeek.low > 1;
  return (
    <>
      <CurvePlot
        curve={curve.map(({ ageDays, ...share }) => ({ at: ageDays, ...share }))}
        xLabel={w.days}
        yLabel={w.axis}
        xText={countText}
        yText={percentText}
        yMost={Math.min(2, Math.max(1.2, ...curve.map(({ value }) => value * 1.1)))}
        level={{ at: 1, label: '' }}
      />
      <p>
        {weakens ? w.weakens : rises ? w.rises : w.unclear}{' '}
        {perWeek.value !== null &&
          perWeek.low !== null &&
          perWeek.high !== null &&
          w.change(changeText(perWeek.value), changeText(perWeek.low), changeText(perWeek.high))}{' '}
        {!rises &&
          half.value !== null &&
          half.low !== null &&
          half.value < HALF_LIVES_SAID &&
          (half.high === null
            ? w.halfLife(countText(half.value), countText(half.low))
            : w.halfLifeBounded(countText(half.value), countText(half.low), countText(half.high)))}
      </p>
      <p className="key">{w.used(used, countText(oldestDays))}</p>
      <FoldedTable
        title={reviewWords.behind}
        of={title}
        rows={curve}
        keyOf={({ ageDays }) => ageDays}
        columns={[
          { head: w.columns.age, figure: [({ ageDays }) => ageDays, rateText] },
          { head: w.columns.share, figure: [({ value }) => value, percentText] },
          { head: w.columns.low, figure: [({ low }) => low, percentText] },
          { head: w.columns.high, figure: [({ high }) => high, percentText] },
        ]}
      />
    </>
  );
}

/** No lure hangs longer than a season. */
const HALF_LIVES_SAID = 365;
