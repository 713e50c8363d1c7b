/** A published rule in few words, where one is chosen among its rivals. */
import { type ActionRule, regionName, ruleById } from '@duskwatch/core';
import { percentText, rateText } from '../../format/number.ts';
import { cropName, insectName, localName, sampleKind } from '../../text/names.ts';
import { settingsWords } from '../../text/settings.ts';
import { wordingIn } from '../../text/wording.ts';

export function ruleText(rule: ActionRule): string {
  const w = settingsWords.rules;
  const region = rule.region === '' ? w.everywhere : localName(regionName(rule.region));
  return `${asked(rule, region)}: ${w.may[rule.may]}`;
}

function asked(rule: ActionRule, region: string): string {
  const w = settingsWords.rules;
  switch (rule.kind) {
    case 'catch-threshold':
      return w.figure(String(rule.threshold), w.per[rule.per], region);
    case 'catch-table':
      return w.figure(String(rule.tiers[0]!.from), w.per.night, region);
    case 'infestation':
      return rule.sign === 'egg-masses'
        ? w.masses(rateText(rule.share), sampleKind(rule.unit), region)
        : w.share(percentText(rule.share), sampleKind(rule.unit), w.signs[rule.sign], region);
    case 'heat-scout':
      return w.heat(wordingIn('C').event[rule.lookFor], region);
  }
}

/** One that was chosen by its id, with what it is about; the id itself where the catalogue no longer has it. */
export function chosenRuleText(ruleId: string): string {
  const rule = ruleById(ruleId);
  if (rule === null) return ruleId;
  return `${settingsWords.rules.rivals(insectName(rule.insect), rule.crops.map(cropName).join(', '))}: ${ruleText(rule)}`;
}
