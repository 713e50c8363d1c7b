import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';

const duskwatch = commandUnderTest();
let demo: string;

describe('duskwatch scouting, on the invented demo', () => {
  beforeAll(async () => {
    demo = duskwatch.path('demo');
    await duskwatch.run('demo', '--folder', demo);
  });

  const pairs = async () => {
    const { out } = await duskwatch.run('scouting', demo, '--json');
    const view = JSON.parse(out) as { fields: { fieldId: string; pairs: { insect: string; rules: unknown[] }[] }[] };
    return view.fields.flatMap(({ fieldId, pairs: each }) => each.map((pair) => ({ fieldId, ...pair })));
  };

  it('lists what may be scouted, and gives the plan of one pair with where to walk and when to stop', async () => {
    const pair = (await pairs()).find(({ rules }) => rules.length > 0)!;
    const list = await duskwatch.run('scouting', demo);
    expect(list).toMatchObject({ exit: 0, err: '' });
    expect(list.out).toContain(pair.fieldId);
    const plan = await duskwatch.run('scouting', demo, '--field', pair.fieldId, '--insect', pair.insect);
    expect(plan.out).toMatch(/1\. Keep out of the edge/);
    expect(plan.out).toMatch(/Place 5 of 5 +\d+ +(0-\d+|-) +\d+\+/);
  });

  it('writes sheets to print, and never over a file that is there', async () => {
    const pair = (await pairs())[0]!;
    const file = duskwatch.path('sheet.pdf');
    const args = ['scouting', demo, '--field', pair.fieldId, '--insect', pair.insect, '--pdf', file, '--language', 'es'];
    expect(await duskwatch.run(...args)).toMatchObject({ exit: 0, out: expect.stringContaining('1 sheet written') });
    expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
    expect((await duskwatch.run(...args)).exit).toBe(1);
  });

  it('names a field it does not know, and asks for both field and insect', async () => {
    const unknown = await duskwatch.run('scouting', demo, '--field', 'nowhere', '--insect', 'helicoverpa-zea');
    expect(unknown.exit).toBe(1);
    expect(unknown.err).toContain('nowhere');
    expect((await duskwatch.run('scouting', demo, '--field', 'nowhere')).exit).toBe(2);
  });
});
