import { Editor } from '../../shared/record/Editor.tsx';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';

export function NewField({ close }: { close: () => void }) {
  return (
    <Panel title={recordWords.titles.add.fields} close={close}>
      <Editor kind="fields" start={{}} held={null} close={close} />
    </Panel>
  );
}
