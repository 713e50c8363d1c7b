import { beforeAll, describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();
beforeAll(async () => {
  expect((await duskwatch.run('demo', '--folder', duskwatch.path('demo'))).exit).toBe(0);
});

describe('duskwatch bulletin', () => {
  it('drafts the demo\u2019s week in either language, as text, as a page and as what it rests on', async () => {
    const english = await duskwatch.run('bulletin', duskwatch.path('demo'));
    expect(english).toMatchObject({ exit: 0, err: '' });
    expect(english.out).toContain('a decision is due in');
    expect(english.out).toContain('Invented demo');
    const spanish = await duskwatch.run('bulletin', duskwatch.path('demo'), '--language', 'es', '--html');
    expect(spanish.out).toMatch(/^<!doctype html>\n<html lang="es">[\s\S]*decisión pendiente en/);
    const view = JSON.parse((await duskwatch.run('bulletin', duskwatch.path('demo'), '--json')).out);
    expect(view).toMatchObject({ on: '2026-07-15', fewestFarms: 3 });
    expect(view.insects.length).toBeGreaterThan(2);
  });

  it('tells nothing of a program of one farm, and says that it withholds it', async () => {
    const { out } = await duskwatch.run('bulletin', duskwatch.folder('one', smallFolder), '--on', '2026-07-15');
    expect(out).not.toMatch(/Hill farm|North piece|30 in/);
    expect(out).toMatch(/what stands on fewer is not told \(\d this week\)/);
  });
});
