import { describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();

interface Chosen {
  readonly region: string | null;
  readonly rivals: readonly {
    readonly insect: string;
    readonly by: string;
    readonly rules: readonly { readonly id: string }[];
  }[];
}
const NORTHEAST = 'sweet-corn-fall-armyworm-catch';
const MAINE = 'sweet-corn-fall-armyworm-catch-maine';

describe('duskwatch rules', () => {
  const shown = async (...args: readonly string[]) => {
    const { exit, out, err } = await duskwatch.run('rules', ...args, '--json');
    expect(err === '' || err.startsWith('Kept in')).toBe(true);
    expect(exit).toBe(0);
    const { region, rivals } = JSON.parse(out) as Chosen;
    const armyworm = rivals.find(({ insect }) => insect === 'spodoptera-frugiperda')!;
    return [region, armyworm.rules[0]!.id, armyworm.by];
  };

  it('chooses the region, one rule by name, and the region alone again, and shows what speaks', async () => {
    const folder = duskwatch.folder('program', smallFolder);
    expect((await duskwatch.run('import', folder)).exit).toBe(0);
    expect(await shown()).toEqual([null, MAINE, 'strictest']);
    expect(await shown('--region', 'northeastern united states')).toEqual(['Northeastern United States', NORTHEAST, 'region']);
    expect(await shown('--choose', MAINE)).toEqual(['Northeastern United States', MAINE, 'name']);
    expect(await shown('--by-region')).toEqual(['Northeastern United States', NORTHEAST, 'region']);
    expect(await shown('--region', 'Nuevo Hampshire')).toEqual(['New Hampshire', NORTHEAST, 'region']);
    expect(await shown('--region', 'none')).toEqual([null, MAINE, 'strictest']);
  });

  it('names rivals with what each may do and its source', async () => {
    const { out } = await duskwatch.run('rules', duskwatch.folder('program', smallFolder));
    expect(out).toContain('Region: not chosen (Delaware, ');
    expect(out).toContain(`speaks  ${MAINE}: 3 a week, Maine; sends people to look, and the plants decide.`);
    expect(out).toContain(`beside  ${NORTHEAST}: 50 a week, Northeastern United States;`);
  });

  it.each([
    ['a region that the catalogue has not', ['--region', 'Atlantis'], 'Northeastern United States'],
    ['a rule without a rival', ['--choose', 'potato-corn-borer-catch'], MAINE],
  ])('refuses %s, and changes nothing', async (_, args, expected) => {
    await duskwatch.run('import', duskwatch.folder('program', smallFolder));
    const before = await duskwatch.run('rules', '--json');
    const { exit, out, err } = await duskwatch.run('rules', ...args);
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(err).toContain(expected);
    expect((await duskwatch.run('rules', '--json')).out).toBe(before.out);
  });

  it('chooses nothing in a folder, and nothing where there is no program', async () => {
    const inFolder = await duskwatch.run('rules', duskwatch.folder('program', smallFolder), '--region', 'Maine');
    expect(inFolder.exit).toBe(2);
    expect(inFolder.err).toContain('written into the database');
    const nowhere = await duskwatch.run('rules', '--region', 'Maine', '--data', duskwatch.path('empty'));
    expect(nowhere.exit).toBe(1);
    expect(nowhere.err).toContain('Import one first');
  });
});
