import { recordWords } from '../../text/record.ts';
import { Editor } from '../record/Editor.tsx';
import { Panel } from '../record/Panel.tsx';

export function NewField({ close }: { close: () => void }) {
  return (
    <Panel title={recordWords.titles.add.fields} close={close}>
      <Editor kind="fields" start={{}} held={null} close={close} />
    </Panel>
  );
}
