/** What README tells people to type works as it stands, one command after the other. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { checkoutRoot } from './checkout.ts';
import { commandUnderTest } from './testing/command.ts';
import { freePort } from './testing/free-port.ts';

const duskwatch = commandUnderTest({ inOwnFolder: true });

const blocks = [...readFileSync(join(checkoutRoot, 'README.md'), 'utf8').matchAll(/^```\n(.*?)^```$/gms)].map(
  ([, block]) => block!,
);
const lines = blocks.flatMap((block) => block.trimEnd().split('\n'));
const commands = lines.filter((line) => line.startsWith('npx duskwatch ')).map((line) => line.split(' ').slice(2));
const serves = ([name]: readonly string[]) => name === 'serve';

it('names what npm does, and no command carries a remark that a shell would take for an argument', () => {
  expect(lines.filter((line) => line.startsWith('npm '))).toEqual(['npm start', 'npm run setup']);
  expect(lines.filter((line) => line.includes('#'))).toEqual([]);
});

it('every command that ends does so well, in the order of README', async () => {
  const ending = commands.filter((command) => !serves(command));
  expect(ending.length).toBeGreaterThan(10);
  for (const command of ending) {
    const { exit, err } = await duskwatch.run(...command);
    expect(`${command.join(' ')}: ${exit}${exit === 0 ? '' : ` ${err}`}`).toBe(`${command.join(' ')}: 0`);
  }
});

it('every way to serve prints an address', async () => {
  for (const command of commands.filter(serves)) {
    const child = duskwatch.start(...command, '--port', String(await freePort()));
    const closed = new Promise((resolve) => child.on('close', resolve));
    const told = new Promise<string>((resolve, reject) => {
      let said = '';
      for (const stream of [child.stdout!, child.stderr!]) stream.on('data', (part) => (said += part));
      child.stdout!.on('data', () => said.includes('http') && resolve(said));
      void closed.then((exit) => reject(new Error(`ended with ${exit}: ${said}`)));
    });
    expect(await told).toMatch(/https?:\/\//);
    child.kill('SIGTERM');
    await closed;
  }
});
