import { type ActionRule, catalogue, citation, type RulesView } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { getJson } from '../../api/client.ts';
import { TextEntry } from '../../shared/entry/entries.tsx';
import { Form } from '../../shared/entry/Form.tsx';
import { ruleText } from '../../shared/record/rule-text.ts';
import { useSettings } from '../../shared/settings/useSettings.ts';
import { cropName, insectName, stageName } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';
import { useWording } from '../../text/wording.ts';
import { SelectField } from '../../ui/Field.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { Panel } from '../../ui/Panel.tsx';
import { Table } from '../../ui/table/Table.tsx';

const rulesQuery = queryOptions({
  queryKey: ['week', 'rules'],
  queryFn: ({ signal }) => getJson<RulesView>('/api/rules', signal),
});

/** Every published rule: what it asks, whether the program goes by it, and the fields for which it speaks today. */
export function AllRules() {
  const w = settingsWords.allRules;
  const { design, standing } = useWording();
  const { data } = useQuery(rulesQuery);
  const { settings, mayWrite, keep } = useSettings();
  const [insect, choose] = useState('');
  const [leaving, leave] = useState<ActionRule | null>(null);
  if (!data) return null;
  const speaking = new Map(data.speaking.map(({ ruleId, fields }) => [ruleId, fields]));
  const off = new Map(data.off.map(({ ruleId, reason }) => [ruleId, reason]));
  const insects = [...new Set(catalogue.rules.map((rule) => rule.insect))];
  const put = (rule: ActionRule, reason: string | null) => {
    const others = (settings?.rulesOff ?? []).filter(({ ruleId }) => ruleId !== rule.id);
    keep({ rulesOff: reason === null ? others : [...others, { ruleId: rule.id, reason }] });
  };
  return (
    <section className="all-rules" aria-labelledby="all-rules-title">
      <h2 id="all-rules-title">{w.title(catalogue.rules.length)}</h2>
      <p className="key">{w.text}</p>
      <SelectField
        label={w.insect}
        value={insect}
        all={w.allInsects}
        choices={insects.map((id) => [id, insectName(id)])}
        choose={choose}
      />
      <Table<ActionRule>
        label={w.title(catalogue.rules.length)}
        className="all-rules-table"
        height="page"
        rows={catalogue.rules.filter((rule) => insect === '' || rule.insect === insect)}
        keyOf={({ id }) => id}
        rowClass={({ id }) => (off.has(id) ? 'rule-off' : undefined)}
        columns={[
          { head: w.insect, value: (rule) => insectName(rule.insect), names: true },
          { head: w.crop, value: ({ crops }) => crops.map(cropName).join(', ') },
          { head: w.asks, value: ruleText },
          {
            head: w.stages,
            value: ({ crops, stages }) =>
              stages === null ? w.anyStage : stages.map((stage) => stageName(crops[0] ?? '', stage)).join(', '),
          },
          { head: w.design, value: (rule) => ('design' in rule && rule.design ? design[rule.design] : w.anyDesign) },
          {
            head: w.speaks,
            value: ({ id }) => speaking.get(id)?.length ?? 0,
            cell: ({ id }) => <Speaking fields={speaking.get(id) ?? []} />,
          },
          {
            head: w.state,
            value: ({ id }) => (off.has(id) ? w.isOff(off.get(id)!) : w.isOn),
            cell: (rule) => (
              <>
                {off.has(rule.id) ? w.isOff(off.get(rule.id)!) : w.isOn}
                {mayWrite && settings && (
                  <button
                    type="button"
                    className="plain-button"
                    aria-label={(off.has(rule.id) ? w.onNamed : w.offNamed)(`${insectName(rule.insect)}, ${ruleText(rule)}`)}
                    onClick={() => (off.has(rule.id) ? put(rule, null) : leave(rule))}
                  >
                    {off.has(rule.id) ? w.putOn : w.putOff}
                  </button>
                )}
              </>
            ),
          },
          {
            head: w.source,
            value: ({ source }) => citation(source),
            cell: ({ source, standing: how }) => (
              <>
                <span lang="en">{citation(source)}</span> <small>{standing[how]}</small>
              </>
            ),
          },
        ]}
      />
      {leaving && (
        <Panel title={w.offTitle} close={() => leave(null)}>
          <WhyOff
            rule={leaving}
            done={(reason) => {
              put(leaving, reason);
              leave(null);
            }}
          />
        </Panel>
      )}
    </section>
  );
}

function Speaking({ fields }: { fields: RulesView['speaking'][number]['fields'] }) {
  const w = settingsWords.allRules;
  if (fields.length === 0) return <span className="absent">{w.none}</span>;
  return (
    <Folded title={w.fields(fields.length)}>
      <ul>
        {fields.map(({ fieldId, name, farm, insect }) => (
          <li key={`${fieldId}|${insect}`}>
            <Link to="/fields/$fieldId" params={{ fieldId }} hash={insect}>
              {name}
            </Link>{' '}
            {farm}
          </li>
        ))}
      </ul>
    </Folded>
  );
}

/** Nothing is switched off without a word that stays in the evidence. */
function WhyOff({ rule, done }: { rule: ActionRule; done: (reason: string) => void }) {
  const w = settingsWords.allRules;
  const [reason, setReason] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const submit = async () => {
    const said = reason.trim();
    setFault(said === '' ? w.noReason : null);
    if (said !== '') done(said);
  };
  return (
    <Form faults={{ name: fault }} submitText={w.putOff} submit={submit}>
      <p>
        {insectName(rule.insect)}, {rule.crops.map(cropName).join(', ')}: {ruleText(rule)}
      </p>
      <p>{w.offText}</p>
      <TextEntry label={w.reason} value={reason} change={setReason} fault={fault} autoComplete="off" />
    </Form>
  );
}
