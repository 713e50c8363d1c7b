/** For which fields each rule speaks, read off the evidence of every field's advice. */
import { adviseCell } from '../advice/decide.ts';
import type { Prepared } from '../advice/prepare.ts';
import type { Advice } from '../advice/types.ts';
import { formatDay } from '../base/day.ts';
import { groupByEach } from '../base/group-by.ts';
import type { RulesView } from './rules-schema.ts';
import { inThisYear } from './week.ts';

export function rulesView(prepared: Prepared): RulesView {
  const { name, invented, rulesOff } = prepared.program.settings;
  const cells = prepared.program.fields
    .filter((field) => inThisYear(prepared, field))
    .flatMap(({ fieldId, name: fieldName, farm }) =>
      prepared.insects.map((insect) => {
        const advice = adviseCell(prepared, fieldId, insect);
        return { said: { fieldId, name: fieldName, farm, insect, verb: advice.verb }, rules: rulesBehind(advice) };
      }),
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
