import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { formatDay } from '@duskwatch/core';
import { writeProgramFolder } from '@duskwatch/exchange';
import { beforeAll, describe, expect, it } from 'vitest';
import { inventedSeason, ON } from '../../core/src/questions/invented-season.testing.ts';
import { checkoutRoot } from './checkout.ts';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();
const json = async (...args: readonly string[]) => {
  const { exit, out, err } = await duskwatch.run(...args, '--json');
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  return JSON.parse(out);
};
let demo: string;

describe('what a season’s records teach, of the invented demo', () => {
  beforeAll(async () => {
    demo = duskwatch.path('demo');
    await duskwatch.run('demo', '--folder', demo);
  });

  it('learn compares the designs that stood together, near the ratio the demo was made with', async () => {
    const { review, lessons, years } = await json('learn', demo, '--on', '2025-11-01');
    const [compared] = lessons.sideBySide;
    expect(compared).toMatchObject({ insect: 'helicoverpa-zea', compared: 'design', learned: { known: true } });
    // A mesh cone of the demo catches 0.42 of what a wire cone does.
    const [{ ratio, treatment }] = compared.learned.ratios;
    const wireOverMesh = treatment === 'wire-cone' ? ratio : { low: 1 / ratio.high, high: 1 / ratio.low };
    expect(wireOverMesh.low).toBeLessThan(1 / 0.42);
    expect(wireOverMesh.high).toBeGreaterThan(1 / 0.42);
    expect(compared.leftOut['other-nights']).toBeGreaterThan(0);

    expect(review.season).toEqual({ year: 2025, from: '2025-01-01', to: '2025-12-31' });
    expect(review.program.cost).toEqual({ known: false, missing: ['trap', 'lure', 'visit', 'sample'] });
    expect(review.program.calls.given.decide).toBeGreaterThan(0);
    for (const run of review.verbs.runs) expect(run.from <= run.to && run.to <= '2025-11-01').toBe(true);
    const borer = years.find(({ insect }: { insect: string }) => insect === 'ostrinia-nubilalis');
    expect(borer.curves.map(({ season }: { season: { year: number } }) => season.year)).toEqual([2024, 2025]);
  });

  it('learn says what it cannot know yet, and what it would take', async () => {
    const { exit, out } = await duskwatch.run('learn', demo);
    expect(exit).toBe(0);
    expect(out).toContain('Season 2026 (open: known through 2026-07-15)');
    expect(out).toMatch(/Catch against infestation\n[\s\S]*not known yet: .* needed: 20 or more/);
  });

  it('questions asks of a season only about a nought too many in it: in the demo, and in an invented season', async () => {
    expect((await json('questions', demo)).questions).toMatchObject([
      { kind: 'unlikely-count', side: 'high', checks: [{ trapId: 'MA3-ON-26', checkedOn: '2026-05-28' }] },
    ]);
    expect((await json('questions', demo, '--on', '2025-10-01')).questions).toEqual([]);
    const sound = inventedSeason(3);
    const height = sound.checks.reduce((most, check) => ((check.targetCount ?? 0) > (most.targetCount ?? 0) ? check : most));
    const checks = sound.checks.map((check) => (check === height ? { ...check, targetCount: height.targetCount! * 10 } : check));
    const mistyped = duskwatch.path('mistyped');
    await writeProgramFolder({ ...sound, checks }, mistyped);
    const args = ['questions', mistyped, '--on', formatDay(ON)];
    const { questions } = await json(...args);
    const { trapId, checkedOn } = height;
    expect(questions).toMatchObject([{ kind: 'unlikely-count', side: 'high', whom: 'scout', checks: [{ trapId, checkedOn }] }]);
    expect(questions[0].inSeason).toBeLessThan(0.015);
    expect((await duskwatch.run(...args)).out).toContain('Ask the scout');
  });

  it('flights tells how far each flight has come and dates what is ahead, soonest case first', async () => {
    const cells = await json('flights', demo);
    const borer = cells.find(
      ({ field, insect }: { field: string; insect: string }) => field === 'quernstead-kiln' && insect === 'ostrinia-nubilalis',
    );
    expect(borer.flights.read.flights[0]).toMatchObject({ number: 1, status: 'over' });
    const hatch = borer.models[0].events.find(
      ({ event }: { event: { event: string; generation: number } }) => event.event === 'egg-hatch' && event.generation === 2,
    );
    const { early, middle, late } = hatch.begins.window;
    expect([early, middle, late].toSorted()).toEqual([early, middle, late]);
    expect(early >= '2026-07-15').toBe(true);
    // Degree-days stay numbers where a day would be text.
    expect(hatch.event.from).toBe(1550);
  });
});

describe('duskwatch hindcast', () => {
  it('prints the skill of forecasts for real weather as the documents hold it', async () => {
    const csv = readFileSync(join(checkoutRoot, 'node_modules/vega-datasets/data/weather.csv'), 'utf8');
    const [, ...lines] = csv.trim().split('\n');
    const rows = lines.map((line) => line.split(',')).filter(([location]) => location === 'Seattle');
    const weather = `source_id,date,tmin_c,tmax_c\n${rows.map(([, date, , tmax, tmin]) => `Seattle,${date},${tmin},${tmax}`).join('\n')}\n`;
    const { exit, out } = await duskwatch.run(
      'hindcast',
      `${duskwatch.folder('seattle', { 'weather.csv': weather })}/weather.csv`,
    );
    expect(exit).toBe(0);
    const document = readFileSync(join(checkoutRoot, 'docs/forecast-skill.md'), 'utf8');
    const seattle = document.split('\n').filter((line) => line.startsWith('| Seattle |'));
    expect(out.split('\n').filter((line) => line.startsWith('| Seattle |'))).toEqual(seattle);
  });

  it('refuses a file in which no event came, and prices that are none', async () => {
    const short = duskwatch.folder('short', { 'w.csv': 'date,tmin_c,tmax_c\n2026-01-01,-5,2\n2026-01-02,-4,3\n' });
    expect(await duskwatch.run('hindcast', `${short}/w.csv`)).toMatchObject({ exit: 1, out: '' });
    const folder = duskwatch.folder('prices', smallFolder);
    const { exit, err } = await duskwatch.run('learn', folder, '--prices', 'USD boots=3', '--json');
    expect(exit).toBe(2);
    expect(JSON.parse(err)).toMatchObject([{ where: { parameter: '--prices' }, got: 'boots=3' }]);
    const priced = await json('learn', folder, '--on', '2026-07-15', '--prices', 'USD trap=30 lure=6 visit=2.50');
    expect(priced.review.program.cost).toMatchObject({ known: true, total: 30 + 6 + 2 * 2.5 });
  });
});
