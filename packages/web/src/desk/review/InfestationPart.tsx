import { type InfestationLesson, type IsoDay, modelById, type TemperatureUnit } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom } from '../../format/day.ts';
import { countText, percentText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { cropName, insectName, localName, sampleKind } from '../../text/names.ts';
import { reviewWords } from '../../text/review.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';
import { CurvePlot } from './CurvePlot.tsx';
import { lessonsQuery } from './queries.ts';
import { Suggestion } from './Suggestion.tsx';
import { NotYet, Working } from './Working.tsx';

const w = reviewWords.crop;

export function InfestationPart({ on }: { on: IsoDay | undefined }) {
  const { data, error, refetch } = useQuery(lessonsQuery(on));
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <Working />;
  const lessons = [...data.infestation].sort((a, b) => Number(b.learned.known) - Number(a.learned.known) || b.used - a.used);
  return (
    <>
      <p className="lead">{w.lead}</p>
      {lessons.length === 0 && <p className="not-yet">{w.none}</p>}
      {lessons.map((lesson) => (
        <Lesson
          key={`${lesson.insect} ${lesson.crop} ${lesson.kind} ${lesson.design} ${lesson.response}`}
          lesson={lesson}
          on={data.on}
        />
      ))}
      {lessons.length > 0 && <p className="key">{reviewWords.level(percentText(data.level))}</p>}
    </>
  );
}

function Lesson({ lesson, on }: { lesson: InfestationLesson; on: IsoDay }) {
  const { insect, crop, kind, design, used, learned, leftOut } = lesson;
  const wording = useWording();
  const title = `${insectName(insect)}: ${w.name(sampleKind(kind), cropName(crop), wording.design[design])}`;
  return (
    <section className="lesson">
      <h2>{title}</h2>
      <p className="sub">
        {w.pairs(used)}.{' '}
        {leftOut.notCounted + leftOut.treated + leftOut.noCatch > 0 &&
          w.leftOut(leftOut.notCounted, leftOut.treated, leftOut.noCatch)}
      </p>
      {learned.known ? (
        <>
          <Fit lesson={lesson} learned={learned} />
          <Suggestion lesson={lesson} learned={learned} on={on} />
        </>
      ) : (
        <NotYet why={w.reasons[learned.reason]} figures={learned.figures} />
      )}
      <Samples lesson={lesson} title={title} on={on} />
    </section>
  );
}

type Known = Extract<InfestationLesson['learned'], { known: true }>;

function Fit({
  lesson: { samples, ruleLevel, response, heat, inForce },
  learned,
}: {
  lesson: InfestationLesson;
  learned: Known;
}) {
  const { lag, curve, suggestion, heterogeneity } = learned;
  const [unit] = useTemperatureUnit();
  const found = samples.map(({ found, examined }) => found / examined);
  const levelText = response === 'share-infested' ? percentText : rateText;
  const most = Math.max(...found, ruleLevel ?? 0, ...curve.map(({ value }) => value));
  return (
    <>
      <CurvePlot
        curve={curve.map(({ perNight, ...level }) => ({ at: perNight, ...level }))}
        dots={samples.flatMap(({ field, sampledOn, perNight, found, examined }) =>
          perNight === null ? [] : [{ key: `${field} ${sampledOn}`, at: perNight, value: found / examined }],
        )}
        xLabel={w.axis}
        yLabel={response === 'share-infested' ? w.share : w.perUnit}
        xText={rateText}
        yText={levelText}
        yMost={most * 1.1}
        xRoot
        {...(ruleLevel === null ? {} : { level: { at: ruleLevel, label: w.rule(levelText(ruleLevel)) } })}
        places={[
          { at: suggestion.perNight, label: w.suggested(rateText(suggestion.perNight)) },
          ...(inForce ? [{ at: inForce.perNight, label: w.inForce(rateText(inForce.perNight)) }] : []),
        ]}
      />
      <p>
        {lagText(heat, learned, unit)} {(lag.openBelow || lag.openAbove) && `${w.lagOpen} `}
        {heterogeneity > 1 && w.scatter}
      </p>
    </>
  );
}

function lagText(heat: InfestationLesson['heat'], { lag, lagDays }: Known, unit: TemperatureUnit): string {
  if (heat === null) return w.lag(countText(lag.value), countText(lag.low), countText(lag.high));
  const said = (degreeDays: number) => heatText(degreeDays, heat.unit, unit);
  const model = modelById(heat.modelId);
  const inHeat = w.lagHeat(said(lag.value), said(lag.low), said(lag.high), model ? localName(model.name) : heat.modelId);
  return lagDays === null ? inHeat : `${inHeat} ${w.heatAsDays(countText(lagDays))}`;
}

function Samples({ lesson, title, on }: { lesson: InfestationLesson; title: string; on: IsoDay }) {
  const newest = [...lesson.samples].sort((a, b) => (a.sampledOn < b.sampledOn ? 1 : -1));
  if (newest.length === 0) return null;
  return (
    <FoldedTable
      title={reviewWords.behind}
      of={title}
      rows={newest}
      keyOf={({ field, sampledOn }) => `${field} ${sampledOn}`}
      columns={[
        { head: w.sampleColumns.field, value: ({ name }) => name },
        { head: w.sampleColumns.farm, value: ({ farm }) => farm },
        {
          head: w.sampleColumns.day,
          value: ({ sampledOn }) => sampledOn,
          cell: ({ sampledOn }) => dayTextFrom(sampledOn, on),
        },
        { head: w.sampleColumns.found, figure: [({ found }) => found, countText] },
        { head: w.sampleColumns.of, figure: [({ examined }) => examined, countText] },
        { head: w.sampleColumns.catch, figure: [({ perNight }) => perNight, rateText] },
      ]}
    />
  );
}
