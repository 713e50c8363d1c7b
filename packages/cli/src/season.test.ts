import { beforeAll, describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();
let demo: string;

describe('duskwatch season', () => {
  beforeAll(async () => {
    demo = duskwatch.path('demo');
    await duskwatch.run('demo', '--folder', demo);
  });

  it('prints the demo’s next season: traps and when to hang them, lures to order, and what it costs', async () => {
    const { exit, out, err } = await duskwatch.run('season', demo, '--year', '2027');
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
    expect(out).toContain('Season 2027, 2027-01-01 up to 2028-01-01 (ahead): 110 traps');
    expect(out).toMatch(/European corn borer.*7 days before 2027-\d\d-\d\d, the earliest plausible flight/);
    expect(out).toMatch(/by 2027-04-\d\d +136 of European corn borer/);
    expect(out).toMatch(/Budget: at least [\d.]+ USD/);
    expect(out).toContain('price of lure, melittia-cucurbitae');
  });

  it('gives what the server gives, as JSON, and holds a running season against its plan', async () => {
    const { out } = await duskwatch.run('season', demo, '--json');
    const { plan, truth } = JSON.parse(out);
    expect(plan).toMatchObject({ season: 2026, state: 'running', today: '2026-07-15' });
    expect(truth.lines.length).toBe(plan.lines.length);
    expect(plan.budget.replacedTotal).toBe(21_500);
  });

  it('of a program without plans proposes all of it, and says what it does not know', async () => {
    const { exit, out } = await duskwatch.run('season', duskwatch.folder('small', smallFolder), '--year', '2027');
    expect(exit).toBe(0);
    expect(out).toMatch(/North piece +mesh-cone .*not known .*unknown \(no-model\)/);
  });

  it('refuses a year that is none', async () => {
    expect(await duskwatch.run('season', demo, '--year', 'next')).toMatchObject({ exit: 2, out: '' });
  });
});
