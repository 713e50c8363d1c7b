import { type ActionRule, choosingRule, REGIONS, regionName, rivalRules } from '@duskwatch/core';
import { ruleText } from '../../shared/record/rule-text.ts';
import { useSettings } from '../../shared/settings/useSettings.ts';
import { cropName, insectName, localName } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';
import { SelectField } from '../../ui/Field.tsx';
import { Setting } from '../../ui/Setting.tsx';

/** Which region's published rules hold for the program, and which of two rivals where it chooses by name. */
export function Rules() {
  const w = settingsWords.rules;
  const { settings, mayWrite, keep } = useSettings();
  if (!settings) return null;
  const chosen = settings.chosenRules ?? [];
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
