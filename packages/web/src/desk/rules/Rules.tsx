import { type ActionRule, choosingRule, type ProgramSettings, REGIONS, regionName, rivalRules } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { getJson } from '../../api/client.ts';
import { sessionQuery } from '../../api/session.ts';
import type { StoredVersion } from '../../shared/record/queries.ts';
import { ruleText } from '../../shared/record/rule-text.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { cropName, insectName, localName } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';
import { SelectField } from '../../ui/Field.tsx';
import { Setting } from '../../ui/Setting.tsx';

const settingsQuery = queryOptions({
  queryKey: ['records', 'settings'],
  queryFn: async ({ signal }) => {
    const [held] = await getJson<readonly StoredVersion<'settings'>[]>('/api/records/settings', signal);
    return held ?? null;
  },
});

/** Which region's published rules hold for the program, and which of two rivals where it chooses by name. */
export function Rules() {
  const w = settingsWords.rules;
  const { data: session } = useQuery(sessionQuery);
  const mayRead = session?.person !== null && session?.person !== undefined && session.person.role !== 'reader';
  const { data: held } = useQuery({ ...settingsQuery, enabled: mayRead });
  const mayWrite = useMayWrite()('settings');
  const write = useWriteRecords();
  if (!mayRead || !held?.value) return null;
  const { value: settings } = held;
  const chosen = settings.chosenRules ?? [];
  const keep = (change: Partial<ProgramSettings>) =>
    void write(w.saved, {
      kind: 'settings',
      value: { ...settings, ...change },
      base: { revisionId: held.revisionId, recordId: held.recordId },
      before: settings,
    });
  const choose = (rivals: readonly ActionRule[], ruleId: string) =>
    keep(choosingRule(settings, ruleId) ?? { chosenRules: chosen.filter((id) => rivals.every((rule) => rule.id !== id)) });
  return (
    <Setting title={w.title} note={mayWrite ? w.note : w.readOnly}>
      <p>{w.text}</p>
      <SelectField
        label={w.region}
        value={settings.region ?? ''}
        disabled={!mayWrite}
        all={w.noRegion}
        choices={regionsWith(settings.region).map((region) => [region, localName(regionName(region))])}
        choose={(region) => keep({ region: region || null })}
      />
      {rivalRules().map((rivals) => (
        <SelectField
          key={rivals[0]!.id}
          label={w.rivals(insectName(rivals[0]!.insect), rivals[0]!.crops.map(cropName).join(', '))}
          value={rivals.find(({ id }) => chosen.includes(id))?.id ?? ''}
          disabled={!mayWrite}
          all={w.byRegion}
          choices={rivals.map((rule) => [rule.id, ruleText(rule)])}
          choose={(ruleId) => choose(rivals, ruleId)}
        />
      ))}
    </Setting>
  );
}

/** A region that the program wrote in its own words stays to be chosen. */
const regionsWith = (own: string | null | undefined): string[] => [...new Set([...Object.keys(REGIONS), ...(own ? [own] : [])])];
