/** A published rule in few words, where one is chosen among its rivals. */
import { type ActionRule, regionName, ruleById } from '@duskwatch/core';
import { cropName, insectName, localName } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';

export function ruleText(rule: ActionRule): string {
  const w = settingsWords.rules;
  const region = rule.region === '' ? w.everywhere : localName(regionName(rule.region));
  const figure =
    rule.kind === 'catch-threshold'
      ? w.figure(String(rule.threshold), w.per[rule.per], region)
      : rule.kind === 'catch-table'
        ? w.figure(String(rule.tiers[0]!.from), w.per.night, region)
        : region;
  return `${figure}: ${w.may[rule.may]}`;
}

/** One that was chosen by its id, with what it is about; the id itself where the catalogue no longer has it. */
export function chosenRuleText(ruleId: string): string {
  const rule = ruleById(ruleId);
  if (rule === null) return ruleId;
  return `${settingsWords.rules.rivals(insectName(rule.insect), rule.crops.map(cropName).join(', '))}: ${ruleText(rule)}`;
}
