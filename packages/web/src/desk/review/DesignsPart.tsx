import type { IsoDay, SideBySideLesson, TrapDesign } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { countText, percentText, rateText } from '../../format/number.ts';
import { insectName } from '../../text/names.ts';
import { reviewWords } from '../../text/review.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';
import { lessonsQuery } from './queries.ts';
import { type DrawnRatio, RatioPlot } from './RatioPlot.tsx';
import { NotYet, Working } from './Working.tsx';

const w = reviewWords.designs;

export function DesignsPart({ on }: { on: IsoDay | undefined }) {
  const { data, error, refetch } = useQuery(lessonsQuery(on));
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <Working />;
  return (
    <>
      <p className="lead">{w.lead}</p>
      {data.sideBySide.length === 0 && <p className="not-yet">{w.none}</p>}
      {data.sideBySide.map((lesson) => (
        <Lesson key={`${lesson.insect} ${lesson.compared}`} lesson={lesson} />
      ))}
      {data.sideBySide.length > 0 && <p className="key">{reviewWords.level(percentText(data.level))}</p>}
    </>
  );
}

function Lesson({ lesson }: { lesson: SideBySideLesson }) {
  const { insect, compared, learned, leftOut } = lesson;
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
          {learned.ratios.map((found) => (
            <Ratio key={`${found.treatment} ${found.against}`} found={found} name={name} />
          ))}
          <FoldedTable
            title={reviewWords.behind}
            of={title}
            rows={learned.ratios}
            keyOf={({ treatment, against }) => `${treatment} ${against}`}
            columns={[
              { head: w.columns.pair, value: ({ treatment, against }) => w.ratio(name(treatment), name(against)), names: true },
              { head: w.columns.ratio, figure: [({ ratio }) => ratio.value, rateText] },
              { head: w.columns.low, figure: [({ ratio }) => ratio.low, rateText] },
              { head: w.columns.high, figure: [({ ratio }) => ratio.high, rateText] },
              { head: w.columns.shared, figure: [({ sharedBlocks }) => sharedBlocks, countText] },
              { head: w.columns.sites, figure: [({ sites }) => sites, countText] },
              { head: w.columns.differ, figure: [({ siteLogSd }) => siteLogSd, rateText] },
              { head: w.columns.needed, figure: [({ sitesForUsefulRatio }) => sitesForUsefulRatio, countText] },
            ]}
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

type Found = Extract<SideBySideLesson['learned'], { known: true }>['ratios'][number];

/** One ratio, always of the same of the two, and what the years did to it. */
function Ratio({ found, name }: { found: Found; name: (treatment: string) => string }) {
  const { ratio, sharedBlocks, sites, scatter, sitesForUsefulRatio, seasons, trend, published } = found;
  const [treatment, against] = [name(found.treatment), name(found.against)];
  const [value, low, high] = figures(ratio);
  return (
    <>
      <p>
        {w.text(treatment, against, value, low, high)} {ratio.low <= 1 && ratio.high >= 1 && `${w.maybe} `}
        {w.rests(sharedBlocks, sites)} {w.scatter[scatter]} {sitesForUsefulRatio > sites && w.more(sitesForUsefulRatio)}{' '}
        {published && w.published(rateText(published.low), rateText(published.high), published.source)}
      </p>
      {trend && (
        <p className={trend.clear ? 'doubt' : 'key'}>
          {trend.clear
            ? w.trend(
                String(trend.first.season),
                rateText(trend.first.ratio),
                String(trend.last.season),
                rateText(trend.last.ratio),
                ...figures(trend.perYear),
              )
            : w.noTrend(seasons.length, rateText(trend.perYear.low), rateText(trend.perYear.high))}
        </p>
      )}
      {seasons.length > 1 && (
        <FoldedTable
          title={w.seasons}
          of={w.ratio(treatment, against)}
          rows={seasons}
          keyOf={({ season }) => season}
          columns={[
            { head: w.columns.season, value: ({ season }) => season, names: true },
            { head: w.columns.ratio, figure: [({ ratio: { value: each } }) => each, rateText] },
            { head: w.columns.low, figure: [({ ratio: { low: each } }) => each, rateText] },
            { head: w.columns.high, figure: [({ ratio: { high: each } }) => each, rateText] },
            { head: w.columns.shared, figure: [({ sharedBlocks: each }) => each, countText] },
            { head: w.columns.sites, figure: [({ sites: each }) => each, countText] },
          ]}
        />
      )}
    </>
  );
}

const figures = ({ value, low, high }: { value: number; low: number; high: number }) =>
  [rateText(value), rateText(low), rateText(high)] as const;
