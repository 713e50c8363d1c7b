import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type Advice,
  adviseAll,
  catalogue,
  checkProgram,
  day,
  daysBetween,
  type Evidence,
  prepare,
  RECORD_KINDS,
  recordSchemas,
  settingsSchema,
  type Verb,
} from '@duskwatch/core';
import { catalogueWords, readProgramFolder, readTable, writeProgramFolder } from '@duskwatch/exchange';
import { expect, test } from 'vitest';
import { buildDemoProgram, demoTypingErrorCsv } from './index.ts';

const demo = buildDemoProgram();
const PINNED = '2026-07-15';
const advice = adviseAll(prepare(demo, { on: day(PINNED) }));
const hangingNow = demo.traps.filter((trap) => trap.takenDownOn === null);
const thisSeason = (iso: string) => iso >= '2026-01-01';
const checksOf = (trapId: string) => demo.checks.filter((check) => check.trapId === trapId);

const adviceFor = (field: string, insect: string): Advice => advice.find((a) => a.field === field && a.insect === insect)!;
const kinds = (a: Advice): Evidence['kind'][] => a.because.map((item) => item.kind);

test('the demo says that it is invented and on which day it stopped', () => {
  expect(settingsSchema.parse(demo.settings)).toMatchObject({ invented: true, pinnedOn: PINNED });
  const newest = demo.checks.map((check) => check.checkedOn).sort();
  expect(newest.at(-1)! <= PINNED && newest.at(-1)! >= '2026-07-13').toBe(true);
});

test('every record fits its schema, and the tables fit one another and the catalogue', () => {
  for (const kind of RECORD_KINDS) for (const record of demo[kind]) expect(recordSchemas[kind].parse(record)).toEqual(record);
  expect(checkProgram(demo, { words: catalogueWords })).toEqual([]);
});

test('twelve farms, thirty fields, sixty traps hanging, four insects of the catalogue, three seasons', () => {
  expect(new Set(demo.fields.map((field) => field.farm)).size).toBe(12);
  expect(demo.fields).toHaveLength(30);
  expect(hangingNow).toHaveLength(60);
  const insects = new Set(demo.traps.map((trap) => trap.insect));
  expect(insects.size).toBe(4);
  expect(catalogue.insects.map((insect) => insect.id)).toEqual(expect.arrayContaining([...insects]));
  for (const year of ['2024', '2025']) {
    const days = demo.checks.map((check) => check.checkedOn).filter((on) => on.startsWith(year));
    expect(days.some((on) => on < `${year}-06-01`) && days.some((on) => on > `${year}-09-15`)).toBe(true);
  }
});

test('two builds are the same to the last moth', () => {
  expect(buildDemoProgram()).toEqual(demo);
});

test('a folder written from the demo reads back as the demo', async () => {
  const dir = mkdtempSync(join(tmpdir(), 'demo-'));
  try {
    await writeProgramFolder(demo, dir);
    expect(await readProgramFolder(dir)).toEqual({ ok: true, value: demo });
  } finally {
    rmSync(dir, { recursive: true });
  }
});

test('on the pinned day all five verbs are said, most cells need nothing, and few call for a decision', () => {
  const count = (verb: Verb) => advice.filter((a) => a.verb === verb).length;
  const between = (verb: Verb, low: number, high: number) => {
    expect.soft(count(verb), verb).toBeGreaterThanOrEqual(low);
    expect.soft(count(verb), verb).toBeLessThanOrEqual(high);
  };
  between('decide', 4, 9);
  between('scout', 4, 12);
  between('watch', 20, 40);
  between('covered', 2, 5);
  between('blind', 4, 10);
  expect(count('none')).toBeGreaterThan(advice.length / 3);
});

test('decisions come from counts against a rule and from samples, and blindness from more than one cause', () => {
  const leads = (verb: Verb) => new Set(advice.filter((a) => a.verb === verb).map((a) => a.because[0]!.kind));
  expect(leads('decide')).toEqual(new Set(['rate', 'sample']));
  expect(leads('scout')).toEqual(new Set(['scouting-asked', 'event', 'larvae']));
  const missing = advice.filter((a) => a.verb === 'blind').flatMap((a) => a.because);
  expect(missing.some((item) => item.kind === 'trap-unusable' && item.why === 'unfit')).toBe(true);
  expect(missing.some((item) => item.kind === 'trap-unusable' && item.why === 'overdue')).toBe(true);
  expect(missing.some((item) => item.kind === 'lure-spent')).toBe(true);
  expect(missing.some((item) => item.kind === 'missing' && item.what === 'rule')).toBe(true);
  const scouting = advice.filter((a) => a.verb === 'scout').flatMap((a) => a.because);
  expect(scouting.some((item) => item.kind === 'missing' && item.what === 'stage')).toBe(true);
});

test('a past July can be read too', () => {
  const past = adviseAll(prepare(demo, { on: day('2025-07-22') }));
  expect(past.filter((a) => a.verb === 'decide').length).toBeGreaterThan(2);
  expect(past.filter((a) => a.verb === 'watch').length).toBeGreaterThan(2);
});

test('a post snapped in a storm leaves unfit visits without a count, and its field blind', () => {
  const down = checksOf('TO1-HZ-26').filter((check) => check.condition === 'unfit');
  expect(down.length).toBeGreaterThanOrEqual(2);
  expect(demo.checks.every((check) => (check.targetCount === null) === (check.condition === 'unfit'))).toBe(true);
  expect(adviceFor('tollyacre-strip', 'helicoverpa-zea').verb).toBe('blind');
});

test('some visits are doubtful, some leave the moths in, some come twice in a day, and not everybody counts other moths', () => {
  const season = demo.checks.filter((check) => thisSeason(check.checkedOn));
  expect(season.some((check) => check.condition === 'doubtful')).toBe(true);
  expect(season.some((check) => !check.emptied)).toBe(true);
  expect(season.some((check) => check.visit === 2)).toBe(true);
  expect(season.some((check) => check.otherCount === null && check.condition === 'fit')).toBe(true);
  expect(season.some((check) => (check.otherCount ?? 0) > 0)).toBe(true);
});

test('moths left in a trap are counted again at the next visit', () => {
  const checks = checksOf('DU1-ON-26');
  const left = checks.findIndex((check) => !check.emptied);
  expect(checks[left]!.targetCount).toBeGreaterThan(0);
  expect(checks[left + 1]!.targetCount).toBeGreaterThanOrEqual(checks[left]!.targetCount!);
});

test('weeks were missed, a lure is past its life, one life was never written, and traps were hung late', () => {
  const longestGap = (trapId: string) => {
    const days = checksOf(trapId).map((check) => day(check.checkedOn));
    return Math.max(...days.slice(1).map((on, i) => daysBetween(days[i]!, on)));
  };
  expect(longestGap('IV4-ON-26')).toBeGreaterThanOrEqual(14);
  const newestLure = demo.lures.findLast((lure) => lure.trapId === 'FE3-MC-26')!;
  expect(daysBetween(day(newestLure.placedOn), day(PINNED))).toBeGreaterThan(newestLure.lifeDays!);
  expect(demo.lures.some((lure) => lure.lifeDays === null)).toBe(true);
  const vineBorer = hangingNow
    .filter((trap) => trap.insect === 'melittia-cucurbitae')
    .map((trap) => trap.hungOn)
    .sort();
  expect(daysBetween(day(vineBorer[0]!), day(vineBorer.at(-1)!))).toBeGreaterThan(21);
});

test('one treatment still covers and one has lapsed', () => {
  const state = (field: string, insect: string) =>
    adviceFor(field, insect).because.find((item) => item.kind === 'treatment')?.state;
  expect(adviceFor('fennelgate-lantern', 'helicoverpa-zea').verb).toBe('covered');
  expect(state('dunnoch-sparrow', 'helicoverpa-zea')).toBe('lapsed');
  expect(adviceFor('dunnoch-sparrow', 'helicoverpa-zea').verb).toBe('decide');
});

test('one decision not to treat holds, and another has let its question come back', () => {
  const said = (field: string) => adviceFor(field, 'melittia-cucurbitae');
  expect(said('quernstead-gourd')).toMatchObject({
    verb: 'watch',
    because: expect.arrayContaining([expect.objectContaining({ kind: 'decision', reason: 'harvest-near' })]),
  });
  const answered = said('pightle-great');
  const decision = answered.because.find((item) => item.kind === 'decision')!;
  expect(answered.verb).toBe('decide');
  expect(answered.dueSince! >= decision.holdsUntil).toBe(true);
});

test('samples lie on both sides of their rule, and were walked on days when somebody was on the farm', () => {
  const verdicts = advice.flatMap((a) => a.because).flatMap((item) => (item.kind === 'sample' ? [item.verdict] : []));
  expect(verdicts).toEqual(expect.arrayContaining(['above', 'below']));
  const farmOf = new Map(demo.fields.map((field) => [field.fieldId, field.farm]));
  const trapFarm = new Map(demo.traps.map((trap) => [trap.trapId, farmOf.get(trap.informs[0]!)!]));
  const visited = new Set(demo.checks.map((check) => `${trapFarm.get(check.trapId)} ${check.checkedOn}`));
  const walkedAlone = demo.samples.filter((s) => !visited.has(`${farmOf.get(s.fieldId)} ${s.sampledOn}`));
  expect(walkedAlone).toEqual([]);
});

test('a field is too near its harvest, one has no stage written, and one is informed by two designs', () => {
  const near = adviceFor('larkwater-heron', 'helicoverpa-zea');
  expect(near.because[0]).toMatchObject({ kind: 'out-of-season', why: 'harvest-stop' });
  expect(demo.stages.some((stage) => stage.fieldId === 'pightle-little')).toBe(false);
  expect(kinds(adviceFor('dunnoch-sparrow', 'helicoverpa-zea'))).toContain('other-design');
});

test('the typed sheet is refused for a letter in a count and a day before hanging; corrected, it goes in', () => {
  const { text, corrected, name } = demoTypingErrorCsv();
  const refused = readTable('checks', text, name);
  expect(refused).toMatchObject({ ok: false, problems: [{ where: { file: name, column: 'target_count' }, got: 'O' }] });

  const withZero = readTable('checks', text.replace(/\bO\b/, '0'), name);
  if (!withZero.ok) throw new Error('only the letter should stop the table');
  const early = checkProgram({ ...demo, checks: [...demo.checks, ...withZero.value.records] });
  expect(early).toMatchObject([{ where: { column: 'checked_on' }, got: '2025-07-14' }]);

  const meant = readTable('checks', corrected, name);
  if (!meant.ok) throw new Error('the corrected sheet should be read');
  expect(meant.value.records.length).toBeGreaterThan(3);
  expect(checkProgram({ ...demo, checks: [...demo.checks, ...meant.value.records] })).toEqual([]);
});
