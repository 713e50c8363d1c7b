import type { StationsView } from '@duskwatch/core';
import { recordWords } from '../../text/record.ts';
import { Editor } from '../record/Editor.tsx';
import { Panel } from '../record/Panel.tsx';

/** A trap, and with a new station's name a station. */
export function NewTrap({ view, close }: { view: StationsView; close: () => void }) {
  return (
    <Panel title={recordWords.titles.add.traps} close={close}>
      <Editor kind="traps" start={{ hungOn: view.on, informs: [] }} kept={{ takenDownOn: null }} held={null} close={close} />
    </Panel>
  );
}
