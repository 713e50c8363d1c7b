import type { TrapsView } from '@duskwatch/core';
import { Editor } from '../../shared/record/Editor.tsx';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';

/** A trap, and with a new station's name a station. */
export function NewTrap({ view, close }: { view: TrapsView; close: () => void }) {
  return (
    <Panel title={recordWords.titles.add.traps} close={close}>
      <Editor kind="traps" start={{ hungOn: view.on, informs: [] }} kept={{ takenDownOn: null }} held={null} close={close} />
    </Panel>
  );
}
