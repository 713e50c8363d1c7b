import type { SeasonRecord, SeasonView } from '@duskwatch/core';
import { useState } from 'react';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { Editor } from '../../shared/record/Editor.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { recordWords } from '../../text/record.ts';
import { seasonWords } from '../../text/season.ts';
import { Panel } from '../../ui/Panel.tsx';
import { useHeld } from './useDecide.ts';

/** Opens what the plan is made for: insects, crops, fields, check days, risks and limits. */
export function Asks({ view, text }: { view: SeasonView; text: string }) {
  const [open, setOpen] = useState(false);
  const mayWrite = useMayWrite();
  const held = useHeld('seasons').get(String(view.season)) ?? null;
  if (!mayWrite('seasons')) return null;
  const kept: Partial<SeasonRecord> = { season: view.season };
  return (
    <p className="actions no-print">
      <button type="button" className="button primary" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {text}
      </button>
      {held && <HistoryButton kind="seasons" recordKey={String(view.season)} text={seasonWords.historyOf} />}
      {open && (
        <Panel title={`${recordWords.titles.edit.seasons} ${view.season}`} close={() => setOpen(false)}>
          <Editor kind="seasons" start={held?.value ?? kept} kept={kept} held={held} close={() => setOpen(false)} />
        </Panel>
      )}
    </p>
  );
}
