/** For which fields each rule speaks, read off the evidence of every field's advice. */
import type { Prepared } from '../advice/prepare.ts';
import type { Advice } from '../advice/types.ts';
import { formatDay } from '../base/day.ts';
import { groupByEach } from '../base/group-by.ts';
import type { RulesView } from './rules-schema.ts';
import { advisedFields } from './week.ts';

export function rulesView(prepared: Prepared): RulesView {
  const { name, invented, rulesOff } = prepared.program.settings;
  const cells = advisedFields(prepared).flatMap(({ field: { fieldId, name: fieldName, farm }, advice }) =>
    advice.map((each) => ({
      said: { fieldId, name: fieldName, farm, insect: each.insect, verb: each.verb },
      rules: rulesBehind(each),
    })),
  );
  const speaking = groupByEach(cells, ({ rules }) => rules);
  return {
    program: { name, invented },
    on: formatDay(prepared.on),
    off: rulesOff ?? [],
    speaking: [...speaking].map(([ruleId, those]) => ({ ruleId, fields: those.map(({ said }) => said) })),
  };
}

/** The rule of the verb, and those that the evidence holds the catch or a sample against. */
function rulesBehind({ rule, because }: Advice): string[] {
  const named = because.flatMap((item) => {
    switch (item.kind) {
      case 'threshold':
      case 'tier':
      case 'sample':
        return item.ruleId ?? [];
      default:
        return [];
    }
  });
  return [...new Set(rule ? [rule.id, ...named] : named)];
}
