import type { WeekView } from '@duskwatch/core';
import { useState } from 'react';
import { copyText } from '../../browser/clipboard.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { weekAsCsv, weekAsText } from './copy.ts';
import type { WeekSelection } from './select.ts';

export function CopyButtons({ view, selection }: { view: WeekView; selection: WeekSelection }) {
  const [said, say] = useState('');
  const w = words.week;
  const wording = useWording();
  const copy = async (text: string) => say((await copyText(text)) ? w.copied : w.copyFailed);
  return (
    <>
      <button type="button" className="button" onClick={() => copy(weekAsText(view, selection, wording))}>
        {w.copyText}
      </button>
      <button type="button" className="button" onClick={() => copy(weekAsCsv(selection))}>
        {w.copyCsv}
      </button>
      <button type="button" className="button" onClick={() => window.print()}>
        {w.print}
      </button>
      <output className="said">{said}</output>
    </>
  );
}
