import { describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { smallFolder } from './testing/small-folder.ts';

const ESCAPE = String.fromCharCode(27);
const duskwatch = commandUnderTest();
const COMMANDS = [
  'advise',
  'heat',
  'learn',
  'season',
  'questions',
  'rules',
  'bulletin',
  'flights',
  'hindcast',
  'import',
  'export',
  'serve',
  'demo',
  'backup',
  'verify',
  'doctor',
  'restore',
];

describe('duskwatch', () => {
  it('lists its commands, and tells what its exit codes mean', async () => {
    const { exit, out } = await duskwatch.run('--help');
    expect(exit).toBe(0);
    for (const command of COMMANDS) expect(out).toContain(`\n  ${command}`);
    expect(out).toContain('problems in the data');
  });

  it.each(COMMANDS)('shows how %s is used, by example', async (command) => {
    const { exit, out } = await duskwatch.run(command, '--help');
    expect(exit).toBe(0);
    expect(out).toContain(`Examples:\n  duskwatch ${command}`);
  });

  it.each([
    ['an unknown command', ['fly']],
    ['an unknown option', ['advise', '--loudly']],
    ['a missing argument', ['export']],
    ['a day that does not exist', ['advise', '--on', '2026-02-30']],
  ])('refuses %s as wrong usage, on stderr alone', async (_, args) => {
    const { exit, out, err } = await duskwatch.run(...args);
    expect({ exit, out }).toEqual({ exit: 2, out: '' });
    expect(err).not.toBe('');
  });

  it('writes no colours and draws nothing into a pipe', async () => {
    const folder = duskwatch.folder('piped', smallFolder);
    for (const args of [['--help'], ['advise', folder, '--on', '2026-07-15'], ['import', folder]]) {
      const { exit, out, err } = await duskwatch.run(...args);
      expect(exit).toBe(0);
      expect(out + err).not.toContain(ESCAPE);
      expect(err).not.toContain('\r');
    }
  });

  it('ends quietly when its reader has seen enough', async () => {
    const child = duskwatch.start('demo', '--folder', duskwatch.path('demo'));
    await new Promise((resolve) => child.on('close', resolve));
    const advising = duskwatch.start('advise', duskwatch.path('demo'), '--json');
    let err = '';
    advising.stderr!.on('data', (part) => {
      err += part;
    });
    advising.stdout!.once('data', () => advising.stdout!.destroy());
    const exit = await new Promise((resolve) => advising.on('close', resolve));
    expect({ exit, err }).toEqual({ exit: 0, err: '' });
  });
});
