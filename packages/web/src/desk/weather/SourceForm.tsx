import { leftEmpty } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Editor } from '../../shared/record/Editor.tsx';
import { recordsQuery } from '../../shared/record/queries.ts';
import { recordWords } from '../../text/record.ts';
import { Panel } from '../../ui/Panel.tsx';

/** What is written down of a weather source; a source that has days and nothing else yet is begun. */
export function SourceForm({ sourceId, close }: { sourceId: string | null; close: () => void }) {
  const { data } = useQuery(recordsQuery('sources'));
  if (!data) return null;
  const held = data.find(({ value }) => value.sourceId === sourceId);
  return (
    <Panel title={held ? recordWords.titles.edit.sources : recordWords.titles.add.sources} close={close}>
      <Editor
        kind="sources"
        start={held?.value ?? { ...leftEmpty('sources'), fetching: false, ...(sourceId !== null && { sourceId }) }}
        {...(held && { kept: { sourceId: held.value.sourceId } })}
        held={held ? { base: { recordId: held.recordId, revisionId: held.revisionId }, value: held.value } : null}
        close={close}
      />
    </Panel>
  );
}
