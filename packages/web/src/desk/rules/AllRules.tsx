import { type ActionRule, catalogue, citation, ownRule, type RulesView } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { getJson } from '../../api/client.ts';
import { instantText } from '../../format/instant.ts';
import { TextEntry } from '../../shared/entry/entries.tsx';
import { Form } from '../../shared/entry/Form.tsx';
import { historyQuery, recordsQuery, type StoredVersion } from '../../shared/record/queries.ts';
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

/** A rule of the table; of the program's own, with who wrote it and when. */
interface Row {
  readonly rule: ActionRule;
  readonly own: { readonly who: string; readonly when: string } | null;
}

/** Every rule: what it asks, whether the program goes by it and who said so, and the fields for which it speaks today. */
export function AllRules() {
  const w = settingsWords.allRules;
  const { design, standing } = useWording();
  const { data } = useQuery(rulesQuery);
  const { settings, mayWrite, keep } = useSettings();
  const { data: own = [] } = useQuery(recordsQuery('rules'));
  const { data: said = [] } = useQuery({ ...historyQuery('settings', 'settings'), enabled: settings !== null });
  const [insect, choose] = useState('');
  const [leaving, leave] = useState<ActionRule | null>(null);
  if (!data) return null;
  const speaking = new Map(data.speaking.map(({ ruleId, fields }) => [ruleId, fields]));
  const off = new Map(data.off.map(({ ruleId, reason }) => [ruleId, reason]));
  const rows: Row[] = [
    ...own.map(({ value, authorName, countedAt }) => ({
      rule: ownRule(value),
      own: { who: authorName, when: instantText(countedAt) },
    })),
    ...catalogue.rules.map((rule) => ({ rule, own: null })),
  ];
  const insects = [...new Set(rows.map(({ rule }) => rule.insect))];
  const state = ({ rule, own: by }: Row): string => {
    if (by !== null) return w.isOwn(by.who, by.when);
    const reason = off.get(rule.id);
    if (reason === undefined) return w.isOn;
    const who = switchedOff(said, rule.id);
    return who === null ? w.isOff(reason) : `${w.isOff(reason)}, ${w.offBy(who.authorName, instantText(who.countedAt))}`;
  };
  const put = (rule: ActionRule, reason: string | null) => {
    const others = (settings?.rulesOff ?? []).filter(({ ruleId }) => ruleId !== rule.id);
    keep({ rulesOff: reason === null ? others : [...others, { ruleId: rule.id, reason }] });
  };
  return (
    <section className="all-rules" aria-labelledby="all-rules-title">
      <h2 id="all-rules-title">{w.title(rows.length)}</h2>
      <p className="key">{w.text}</p>
      <SelectField
        label={w.insect}
        value={insect}
        all={w.allInsects}
        choices={insects.map((id) => [id, insectName(id)])}
        choose={choose}
      />
      <Table<Row>
        label={w.title(rows.length)}
        className="all-rules-table"
        height="page"
        rows={rows.filter(({ rule }) => insect === '' || rule.insect === insect)}
        keyOf={({ rule }) => rule.id}
        rowClass={({ rule }) => (off.has(rule.id) ? 'rule-off' : undefined)}
        columns={[
          { head: w.insect, value: ({ rule }) => insectName(rule.insect), names: true },
          { head: w.crop, value: ({ rule }) => rule.crops.map(cropName).join(', ') },
          { head: w.asks, value: ({ rule }) => ruleText(rule) },
          {
            head: w.stages,
            value: ({ rule: { crops, stages } }) =>
              stages === null ? w.anyStage : stages.map((stage) => stageName(crops[0] ?? '', stage)).join(', '),
          },
          { head: w.design, value: ({ rule }) => ('design' in rule && rule.design ? design[rule.design] : w.anyDesign) },
          {
            head: w.speaks,
            value: ({ rule: { id } }) => speaking.get(id)?.length ?? 0,
            cell: ({ rule: { id } }) => <Speaking fields={speaking.get(id) ?? []} />,
          },
          {
            head: w.state,
            value: state,
            cell: (row) => (
              <>
                {state(row)}
                {mayWrite && settings && row.own === null && (
                  <button
                    type="button"
                    className="plain-button"
                    aria-label={(off.has(row.rule.id) ? w.onNamed : w.offNamed)(
                      `${insectName(row.rule.insect)}, ${ruleText(row.rule)}`,
                    )}
                    onClick={() => (off.has(row.rule.id) ? put(row.rule, null) : leave(row.rule))}
                  >
                    {off.has(row.rule.id) ? w.putOn : w.putOff}
                  </button>
                )}
              </>
            ),
          },
          {
            head: w.source,
            value: ({ rule: { source } }) => citation(source),
            cell: ({ rule: { source, standing: how } }) => (
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

/** Who switched a rule off, the last time that it was on before; null where the history does not say. */
function switchedOff(said: readonly StoredVersion[], ruleId: string): StoredVersion | null {
  const isOff = ({ value }: StoredVersion) =>
    value !== null && 'rulesOff' in value && (value.rulesOff ?? []).some((off) => off.ruleId === ruleId);
  const current = said.findIndex(({ standing }) => standing === 'current');
  let at = current;
  while (at > 0 && isOff(said[at - 1]!)) at--;
  return at < 0 || !isOff(said[at]!) ? null : said[at]!;
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
