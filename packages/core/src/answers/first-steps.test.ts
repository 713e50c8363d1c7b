import { expect, test } from 'vitest';
import { prepare } from '../advice/prepare.ts';
import { checkOf, fieldOf, programOf, trapOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import { emptyProgram, type Program } from '../records/program.ts';
import { firstStepsSchema, firstStepsView } from './first-steps.ts';

const on = (program: Program, date = '2025-07-15') => {
  const view = firstStepsView(prepare(program, { on: day(date) }));
  expect(firstStepsSchema.parse(view)).toEqual(view);
  return { ...view, steps: Object.fromEntries(view.steps.map(({ step, done, of }) => [step, `${done}/${of}`])) };
};

test('an empty program has one thing to do, and each step gives the next one something to do', () => {
  expect(on(emptyProgram())).toMatchObject({
    beginning: true,
    steps: { fields: '0/1', places: '0/0', traps: '0/0', stages: '0/0', weather: '0/0', lures: '0/0', checks: '0/0' },
  });
  const fields = [fieldOf({ fieldId: 'a' }), fieldOf({ fieldId: 'b' })];
  expect(on({ ...emptyProgram(), fields })).toMatchObject({
    beginning: true,
    steps: { fields: '2/2', traps: '0/2', stages: '0/2', weather: '0/2', checks: '0/0' },
  });
  const traps = [trapOf({ trapId: 'T1', informs: ['a'], hungOn: '2025-07-01' })];
  expect(on({ ...emptyProgram(), fields, traps })).toMatchObject({
    beginning: true,
    steps: { traps: '1/2', lures: '0/1', checks: '0/1' },
  });
});

test('the guide ends with the first advice, and does not come back in winter', () => {
  const program = programOf({
    fields: [fieldOf({ fieldId: 'a' })],
    traps: [trapOf({ trapId: 'T1', informs: ['a'], hungOn: '2025-07-01' })],
    stages: [{ fieldId: 'a', observedOn: '2025-07-10', stage: 'silk' }],
    checks: [checkOf('2025-07-14', 90)],
  });
  expect(on(program).beginning).toBe(false);
  expect(on({ ...program, checks: [] }).beginning).toBe(true);
  expect(on(program, '2026-01-15').beginning).toBe(false);
});
