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
import { type Column, Table } from '../../ui/table/Table.tsx';
import { nothingDecided } from './Decide.tsx';
import { areaCrops, areaName } from './names.ts';
import { useHeld } from './useDecide.ts';

/** The areas of one insect, each with what hangs there and when. */
export function AreaTable({ view, lines }: { view: SeasonView; lines: readonly SeasonLineView[] }) {
  const w = seasonWords.plan;
  const wording = useWording();
  const mayWrite = useMayWrite();
  const [changing, change] = useState<SeasonLineView | null>(null);
  const mark = (decided: boolean) => (decided ? <small>{seasonWords.yours}</small> : null);
  return (
    <>
      <Table
        label={`${insectName(lines[0]!.insect)}: ${w.area}`}
        className="season-areas"
        rows={lines}
        keyOf={({ id }) => id}
        columns={[
          {
            head: w.area,
            value: areaName,
            cell: (line) => (
              <>
                {areaName(line)}
                <small>
                  {line.farm}, {areaCrops(line)}
                </small>
              </>
            ),
            names: true,
          },
          {
            head: w.design,
            value: ({ design }) => (design.design ? wording.design[design.design] : seasonWords.notKnown),
            cell: ({ design }) => (
              <>
                {design.design ? wording.design[design.design] : seasonWords.notKnown}
                {mark(design.why === 'stated')}
              </>
            ),
          },
          {
            head: w.traps,
            value: ({ traps }) => traps.count,
            cell: ({ traps: { count, quality } }) => (
              <>
                {count}
                {quality && <small>{w.quality(percentText(quality.missed), percentText(quality.falseAlarm))}</small>}
              </>
            ),
            number: true,
          },
          {
            head: w.hang,
            value: ({ hang }) => hang.on,
            cell: ({ caution, hang }) => (
              <>
                {caution ? <span className="is-due">{w.endsFirst}</span> : <Day on={hang.on} />}
                {mark(hang.basis === 'stated' || hang.basis === 'chosen')}
                {hang.basis === 'chosen' && hang.caution === 'late' && (
                  <small className="is-due">{w.late(shortDate(hang.spread.plausible))}</small>
                )}
              </>
            ),
          },
          {
            head: w.takeDown,
            value: ({ takeDown }) => takeDown.on,
            cell: ({ takeDown }) => (
              <>
                <Day on={takeDown.on} />
                {mark(takeDown.why === 'stated')}
              </>
            ),
          },
          {
            head: w.checksMade,
            value: ({ checks }) => checks || null,
            cell: ({ checks }) => (checks > 0 ? checks : '–'),
            number: true,
          },
          ...(mayWrite('plans') ? [changeColumn(change)] : []),
        ]}
      />
      {changing && <ChangeArea view={view} line={changing} close={() => change(null)} />}
    </>
  );
}

const changeColumn = (change: (line: SeasonLineView) => void): Column<SeasonLineView> => ({
  head: seasonWords.change,
  unseen: true,
  className: 'no-print',
  cell: (line) => (
    <button
      type="button"
      className="row-button"
      aria-haspopup="dialog"
      aria-label={seasonWords.changeFor(areaName(line))}
      onClick={() => change(line)}
    >
      {seasonWords.change}
    </button>
  ),
});

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
