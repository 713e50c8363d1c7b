import type { ReviewPart as Reviewed, ReviewView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { longDay } from '../../format/day.ts';
import { reviewWords } from '../../text/review.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { reviewQuery } from './queries.ts';
import { ReviewCost } from './ReviewCost.tsx';
import { Calls, Missed, Timing } from './ReviewTables.tsx';
import type { ReviewSearch } from './search.ts';
import { Working } from './Working.tsx';

const w = reviewWords.review;

export function ReviewPart(props: { search: ReviewSearch; change: (part: Partial<ReviewSearch>) => void }) {
  const { search, change } = props;
  const { data, error, refetch } = useQuery(reviewQuery(search.on));
  if (error && !data) return <Failure error={error} again={refetch} />;
  if (!data) return <Working />;
  if (data.farms.length === 0) {
    return (
      <section className="quiet">
        <h2>{reviewWords.empty.title}</h2>
        <p>{reviewWords.empty.text}</p>
      </section>
    );
  }
  const only = data.farms.length === 1 ? data.farms[0]! : null;
  const farm = data.farms.find((each) => each.farm === search.farm) ?? only;
  return (
    <>
      <div className="review-tools">
        {!only && (
          <SelectField
            label={w.farm}
            value={farm?.farm ?? ''}
            all={w.allFarms}
            choices={data.farms.map((each) => [each.farm, each.farm])}
            choose={(value) => change({ farm: value || undefined })}
          />
        )}
        <button type="button" className="button" onClick={() => print()}>
          {w.print}
        </button>
      </div>
      <Season view={data} part={farm ?? data.program} farm={farm?.farm ?? null} on={search.on} />
    </>
  );
}

function Season(props: { view: ReviewView; part: Reviewed; farm: string | null; on: string | undefined }) {
  const { view, part, farm, on } = props;
  const year = view.from.slice(0, 4) === view.to.slice(0, 4) ? `${view.year}` : `${view.year}/${view.to.slice(0, 4)}`;
  return (
    <article className="review">
      <h2>
        {farm ?? w.allFarms}: {w.lead(year)}
      </h2>
      <p className="sub">
        {view.open ? w.open(longDay(view.through)) : w.over}
        {farm !== null && `. ${w.private}`}
      </p>
      <Calls view={view} part={part} uncalled={view.uncalled.filter((each) => farm === null || each.farm === farm)} on={on} />
      <Missed visits={part.visits} on={on} />
      <Timing rows={part.timing} />
      <ReviewCost work={part.work} />
    </article>
  );
}
