import type { WeekView } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { TakeAlong } from '../../ui/table/TakeAlong.tsx';
import { weekAsCsv, weekAsText } from './copy.ts';
import type { WeekSelection } from './select.ts';

export function CopyButtons({ view, selection }: { view: WeekView; selection: WeekSelection }) {
  const w = words.week;
  const wording = useWording();
  return (
    <>
      <TakeAlong
        label={`${w.title}, ${view.on}`}
        text={() => weekAsText(view, selection, wording)}
        csv={() => weekAsCsv(selection)}
        className="button"
      />
      <Link to="/sheet" className="button">
        {w.print}
      </Link>
    </>
  );
}
