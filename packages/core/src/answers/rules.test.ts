import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, programOf, stageAt, trapOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { rulesSchema, rulesView } from './index.ts';

describe('the fields that a rule speaks for', () => {
  const program = programOf({
    fields: [fieldOf(), fieldOf({ fieldId: 'F2', name: 'Field two' })],
    traps: [trapOf()],
    stages: [stageAt('silk')],
    checks: [checkOf('2025-07-04', 3), checkOf('2025-07-08', 40)],
  });
  const view = rulesView(prepare(program, { on: day('2025-07-08') }));

  it('are those whose advice rests on it, with what it says there', () => {
    const decided = view.speaking.filter(({ fields }) => fields.some(({ verb }) => verb === 'decide'));
    expect(decided.length).toBeGreaterThan(0);
    for (const { fields } of decided) expect(fields.map(({ fieldId }) => fieldId)).toContain('F1');
    // Nobody traps in the second field, so that no catch is held against anything there.
    expect(view.speaking.flatMap(({ fields }) => fields.map(({ fieldId }) => fieldId))).not.toContain('F2');
  });

  it('are none for a rule that is off, which is told with its reason to whoever reads the rules', () => {
    const [{ ruleId }] = view.speaking as [(typeof view.speaking)[number]];
    const rulesOff = [{ ruleId, reason: 'not ours' }];
    const without = rulesView(prepare({ ...program, settings: { ...program.settings, rulesOff } }, { on: day('2025-07-08') }));
    expect(without.off).toEqual(rulesOff);
    expect(without.speaking.map((each) => each.ruleId)).not.toContain(ruleId);
  });

  it('are told just as the schema says', () => {
    expect(() => rulesSchema.parse(structuredClone(view))).not.toThrow();
  });
});
