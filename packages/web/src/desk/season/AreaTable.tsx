import type { PlanRecord, SeasonLineView, SeasonView } from '@duskwatch/core';
import { useState } from 'react';
import { shortDate } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { Editor } from '../../shared/record/Editor.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { insectName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Panel } from '../../ui/Panel.tsx';
import { nothingDecided } from './Decide.tsx';
import { areaCrops, areaName } from './names.ts';
import { Scroll } from './Scroll.tsx';
import { useHeld } from './useDecide.ts';

/** The areas of one insect, each with what hangs there and when. */
export function AreaTable({ view, lines }: { view: SeasonView; lines: readonly SeasonLineView[] }) {
  const w = seasonWords.plan;
  const wording = useWording();
  const mayWrite = useMayWrite();
  const [changing, change] = useState<SeasonLineView | null>(null);
  const mark = (decided: boolean) => (decided ? <small>{seasonWords.yours}</small> : null);
  return (
    <Scroll label={`${insectName(lines[0]!.insect)}: ${w.area}`}>
      <table className="figures season-areas">
        <thead>
          <tr>
            <th scope="col">{w.area}</th>
            <th scope="col">{w.design}</th>
            <th scope="col" className="number">
              {w.traps}
            </th>
            <th scope="col">{w.hang}</th>
            <th scope="col">{w.takeDown}</th>
            <th scope="col" className="number">
              {w.checksMade}
            </th>
            {mayWrite('plans') && (
              <th scope="col" className="no-print">
                <span className="unseen">{seasonWords.change}</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">
                {areaName(line)}
                <small>
                  {line.farm}, {areaCrops(line)}
                </small>
              </th>
              <td>
                {line.design.design ? wording.design[line.design.design] : seasonWords.notKnown}
                {mark(line.design.why === 'stated')}
              </td>
              <td className="number">
                {line.traps.count}
                {line.traps.quality && (
                  <small>{w.quality(percentText(line.traps.quality.missed), percentText(line.traps.quality.falseAlarm))}</small>
                )}
              </td>
              <td>
                {line.caution ? <span className="is-due">{w.endsFirst}</span> : <Day on={line.hang.on} />}
                {mark(line.hang.basis === 'stated' || line.hang.basis === 'chosen')}
                {line.hang.basis === 'chosen' && line.hang.caution === 'late' && (
                  <small className="is-due">{w.late(shortDate(line.hang.spread.plausible))}</small>
                )}
              </td>
              <td>
                <Day on={line.takeDown.on} />
                {mark(line.takeDown.why === 'stated')}
              </td>
              <td className="number">{line.checks > 0 ? line.checks : '–'}</td>
              {mayWrite('plans') && (
                <td className="no-print">
                  <button
                    type="button"
                    className="row-button"
                    aria-haspopup="dialog"
                    aria-label={seasonWords.changeFor(areaName(line))}
                    onClick={() => change(line)}
                  >
                    {seasonWords.change}
                  </button>
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {changing && <ChangeArea view={view} line={changing} close={() => change(null)} />}
    </Scroll>
  );
}

const Day = ({ on }: { on: string | null }) => (on === null ? seasonWords.notKnown : shortDate(on));

function ChangeArea({ view, line, close }: { view: SeasonView; line: SeasonLineView; close: () => void }) {
  const area = line.decidedHere?.area ?? line.fields[0]!.fieldId;
  const held = useHeld('plans').get(`${view.season}|${line.insect}|${area}`) ?? null;
  const kept: Partial<PlanRecord> = { season: view.season, insect: line.insect, area };
  const key = `${view.season}|${line.insect}|${area}`;
  return (
    <Panel title={`${recordWords.titles.edit.plans}: ${insectName(line.insect)}, ${areaName(line)}`} close={close}>
      <Editor
        kind="plans"
        start={held?.value ?? nothingDecided(view.season, line.insect, area)}
        kept={kept}
        held={held}
        close={close}
      />
      {held && (
        <p className="actions">
          <HistoryButton kind="plans" recordKey={key} text={seasonWords.historyOf} />
        </p>
      )}
    </Panel>
  );
}
