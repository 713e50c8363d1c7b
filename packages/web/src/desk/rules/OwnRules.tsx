import type { RuleRecord } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { instantText } from '../../format/instant.ts';
import { rateText } from '../../format/number.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { Editor } from '../../shared/record/Editor.tsx';
import { recordsQuery, type StoredVersion } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { cropName, insectName, stageName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { settingsWords } from '../../text/settings.ts';
import { useWording } from '../../text/wording.ts';
import { Panel } from '../../ui/Panel.tsx';
import { Table } from '../../ui/table/Table.tsx';

type Stored = StoredVersion<'rules'> & { readonly value: RuleRecord };

/** Thresholds of the program's own: who wrote them, on what they rest; they go before the catalogue's. */
export function OwnRules() {
  const w = settingsWords.ownRules;
  const { design } = useWording();
  const { data } = useQuery(recordsQuery('rules'));
  const mayWrite = useMayWrite()('rules');
  const [adding, add] = useState(false);
  if (!data) return null;
  return (
    <section className="own-rules">
      <h2>{w.title}</h2>
      <p className="key">{w.text}</p>
      {data.length === 0 ? (
        <p className="absent">{w.none}</p>
      ) : (
        <Table<Stored>
          label={w.title}
          rows={data}
          keyOf={({ recordId }) => recordId}
          columns={[
            { head: w.insect, said: ({ value }) => insectName(value.insect), names: true },
            { head: w.crop, said: ({ value }) => cropName(value.crop) },
            {
              head: w.stages,
              said: ({ value: { crop, stages } }) =>
                stages.length === 0 ? w.anyStage : stages.map((stage) => stageName(crop, stage)).join(', '),
            },
            {
              head: w.threshold,
              value: ({ value }) => value.threshold,
              cell: ({ value: { threshold, per } }) => w.figure(rateText(threshold), recordWords.per[per]!),
              number: true,
            },
            { head: w.design, said: ({ value }) => (value.design ? design[value.design] : w.anyDesign) },
            { head: w.may, said: ({ value }) => recordWords.may[value.may ?? 'decide']! },
            { head: w.source, said: ({ value }) => value.source ?? w.noSource },
            { head: w.by, said: ({ authorName, countedAt }) => w.byWhom(authorName, instantText(countedAt)) },
            { head: w.history, unseen: true, cell: ({ key }) => <HistoryButton kind="rules" recordKey={key} /> },
          ]}
        />
      )}
      {mayWrite && (
        <p className="actions">
          <button type="button" className="button" onClick={() => add(true)}>
            {recordWords.titles.add.rules}
          </button>
        </p>
      )}
      {adding && (
        <Panel title={recordWords.titles.add.rules} close={() => add(false)}>
          <Editor kind="rules" start={{}} kept={{ ruleId: nextId(data) }} held={null} close={() => add(false)} />
        </Panel>
      )}
      <p className="key">{mayWrite ? w.caution : settingsWords.rules.readOnly}</p>
    </section>
  );
}

/** The first of `own-1`, `own-2`, … that no rule has. */
const nextId = (rules: readonly Stored[]): string => {
  const taken = new Set(rules.map(({ value }) => value.ruleId));
  for (let n = 1; ; n++) if (!taken.has(`own-${n}`)) return `own-${n}`;
};
