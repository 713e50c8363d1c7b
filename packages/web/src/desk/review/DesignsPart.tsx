import type { IsoDay, SideBySideLesson, TrapDesign } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { countText, percentText, rateText } from '../../format/number.ts';
import { learnWords } from '../../text/learn.ts';
import { insectName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { learnQuery } from './queries.ts';
import { type DrawnRatio, RatioPlot } from './RatioPlot.tsx';
import { NotYet, Working } from './Working.tsx';

const w = learnWords.designs;

export function DesignsPart({ on }: { on: IsoDay | undefined }) {
  const { data, error, refetch } = useQuery(learnQuery(on));
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <Working />;
  return (
    <>
      <p className="lead">{w.lead}</p>
      {data.sideBySide.length === 0 && <p className="not-yet">{w.none}</p>}
      {data.sideBySide.map((lesson) => (
        <Lesson key={`${lesson.insect} ${lesson.compared}`} lesson={lesson} />
      ))}
      {data.sideBySide.length > 0 && <p className="key">{learnWords.level(percentText(data.level))}</p>}
    </>
  );
}

function Lesson({ lesson }: { lesson: SideBySideLesson }) {
  const { insect, compared, learned, used, leftOut } = lesson;
  const wording = useWording();
  const name = (treatment: string) =>
    compared === 'design' ? (wording.design[treatment as TrapDesign] ?? treatment) : w.lure(treatment.replace(/\D.*$/, ''));
  const title = `${insectName(insect)}: ${w.compared[compared]}`;
  const left = Object.entries(leftOut).filter(([, nights]) => nights > 0) as [keyof typeof w.why, number][];
  const ratios: readonly DrawnRatio[] = learned.known
    ? learned.ratios.map(({ treatment, against, ratio }) => ({ label: w.ratio(name(treatment), name(against)), ...ratio }))
    : [];
  return (
    <section className="lesson">
      <h2>{title}</h2>
      {learned.known ? (
        <>
          <RatioPlot ratios={ratios} />
          {learned.ratios.map(({ treatment, against, ratio: { value, low, high }, sharedBlocks, blocksForUsefulRatio }) => (
            <p key={`${treatment} ${against}`}>
              {w.text(name(treatment), name(against), rateText(value), rateText(low), rateText(high))}{' '}
              {low <= 1 && high >= 1 && `${w.maybe} `}
              {w.rests(used, sharedBlocks)} {blocksForUsefulRatio > sharedBlocks && w.more(blocksForUsefulRatio)}
            </p>
          ))}
          {learned.cautions.map((caution) => (
            <p key={caution} className="doubt">
              {w.cautions[caution]}
            </p>
          ))}
          <Folded
            title={learnWords.behind}
            of={title}
            columns={[
              { head: w.columns.pair },
              { head: w.columns.ratio, number: true },
              { head: w.columns.low, number: true },
              { head: w.columns.high, number: true },
              { head: w.columns.shared, number: true },
              { head: w.columns.needed, number: true },
            ]}
            rows={learned.ratios.map(({ treatment, against, ratio, sharedBlocks, blocksForUsefulRatio }) => [
              w.ratio(name(treatment), name(against)),
              rateText(ratio.value),
              rateText(ratio.low),
              rateText(ratio.high),
              countText(sharedBlocks),
              countText(blocksForUsefulRatio),
            ])}
          />
        </>
      ) : (
        <NotYet why={w.reasons[learned.reason]} figures={learned.figures} />
      )}
      {left.length > 0 && (
        <p className="key">
          {w.leftOut}: {left.map(([why, nights]) => `${w.why[why]} ${countText(nights)}`).join(', ')}.
        </p>
      )}
    </section>
  );
}
