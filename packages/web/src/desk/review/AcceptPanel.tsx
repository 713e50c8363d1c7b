import type { InfestationLesson, IsoDay } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { sessionQuery } from '../../api/session.ts';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { longDay } from '../../format/day.ts';
import { countText, percentText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { cropName, insectName, sampleKind } from '../../text/names.ts';
import { reviewWords } from '../../text/review.ts';
import { useWording } from '../../text/wording.ts';
import { Panel } from '../../ui/Panel.tsx';
import { type KnownInfestation, ownRule } from './own-rule.ts';

const w = reviewWords.crop;

/** Asks for the yes without which no threshold is used, with all that will be written before it is. */
export function AcceptPanel(props: { lesson: InfestationLesson; learned: KnownInfestation; on: IsoDay; close: () => void }) {
  const { lesson, learned, on, close } = props;
  const { insect, crop, kind, design, inForce, samples } = lesson;
  const { data: session } = useQuery(sessionQuery);
  const wording = useWording();
  const [unit] = useTemperatureUnit();
  const say = useWriteRecords();
  const [busy, setBusy] = useState(false);
  const days = samples.map(({ sampledOn }) => sampledOn).sort();
  const { missed, needless } = learned.suggestion.errors;
  const share = (rate: typeof missed) => (rate.share === null ? '–' : percentText(rate.share));
  const source = w.source({
    kind: sampleKind(kind),
    samples: samples.length,
    from: days[0] ?? on,
    to: days.at(-1) ?? on,
    design: wording.design[design],
    lag: lesson.heat
      ? w.heatBefore(heatText(learned.lag.value, lesson.heat.unit, unit))
      : w.daysBefore(countText(learned.lag.value)),
    missed: share(missed),
    needless: share(needless),
    who: session?.person?.name ?? '–',
    day: longDay(on),
  });
  const rule = ownRule(lesson, learned, on, source);
  const accept = async () => {
    setBusy(true);
    if (await say(w.said, { kind: 'rules', value: rule, base: null, before: null })) close();
    else setBusy(false);
  };
  return (
    <Panel title={w.confirm.title} close={close}>
      <div className="accept">
        <p>{w.confirm.text(insectName(insect), cropName(crop), wording.design[design], rateText(rule.threshold))}</p>
        {inForce && <p>{w.confirm.replaces(inForce.source || inForce.ruleId)}</p>}
        <p className="caution">{w.confirm.caution}</p>
        <dl>
          <dt>{w.confirm.source}</dt>
          <dd>{source}</dd>
        </dl>
        <div className="actions">
          <button type="button" className="button primary" aria-disabled={busy} onClick={() => !busy && void accept()}>
            {w.confirm.yes}
          </button>
          <button type="button" className="plain-button" onClick={close}>
            {w.confirm.no}
          </button>
        </div>
      </div>
    </Panel>
  );
}
