import { connect, createServer } from 'node:net';
import { describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';

const duskwatch = commandUnderTest();

/** Starts serving and waits for the address it prints. */
async function serve(...args: readonly string[]) {
  const child = duskwatch.start('serve', ...args);
  const closed = new Promise<number | null>((resolve) => child.on('close', resolve));
  let said = '';
  child.stderr!.on('data', (part) => {
    said += part;
  });
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout!.on('data', (part) => {
      said += part;
      const found = /http:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    closed.then((exit) => reject(new Error(`ended with ${exit}: ${said}`)));
  });
  const stop = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    return closed;
  };
  return { address, stop, said: () => said };
}

const freePort = () =>
  new Promise<number>((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

describe('duskwatch serve', () => {
  it('serves the demo, ends cleanly on a signal, and keeps the data for the next start', async () => {
    const args = ['--demo', '--data', duskwatch.path('kept'), '--port', String(await freePort())];
    const first = await serve(...args);
    const program = await (await fetch(`${first.address}api/program`)).json();
    expect(program).toMatchObject({ invented: true });
    expect(first.said()).toContain('Loaded the invented demo');
    expect(await first.stop('SIGTERM')).toBe(0);

    const second = await serve(...args);
    expect(await (await fetch(`${second.address}api/program`)).json()).toEqual(program);
    expect(second.said()).not.toContain('Loaded');
    expect(await second.stop('SIGINT')).toBe(0);
  });

  it('does not wait for a browser that keeps its connection open', async () => {
    const port = await freePort();
    const { stop } = await serve('--port', String(port), '--data', duskwatch.path('open'));
    const held = connect(port, '127.0.0.1');
    await new Promise<void>((resolve) => held.once('connect', resolve));
    held.write('GET /api/health HTTP/1.1\r\nHost: localhost\r\n\r\n');
    await new Promise((resolve) => held.once('data', resolve));
    const begun = Date.now();
    expect(await stop('SIGTERM')).toBe(0);
    expect(Date.now() - begun).toBeLessThan(10_000);
    held.destroy();
  });

  it('takes the next port when the usual one is in use, and says which', async () => {
    const first = await serve('--data', duskwatch.path('one'));
    const second = await serve('--data', duskwatch.path('two'));
    expect(second.address).not.toBe(first.address);
    expect((await fetch(`${second.address}api/health`)).status).toBe(200);
    await Promise.all([first.stop('SIGTERM'), second.stop('SIGTERM')]);
  });

  it('refuses a port that is in use, and one that is none', async () => {
    const port = String(await freePort());
    const first = await serve('--port', port, '--data', duskwatch.path('three'));
    const taken = await duskwatch.run('serve', '--port', port, '--data', duskwatch.path('four'));
    expect(taken.exit).toBe(2);
    expect(taken.err).toContain(port);
    await first.stop('SIGTERM');
    expect((await duskwatch.run('serve', '--port', 'harbour')).exit).toBe(2);
  });

  it('listens to this machine alone, and warns when it is told to do otherwise', async () => {
    const own = await serve('--port', String(await freePort()), '--data', duskwatch.path('five'));
    expect(own.address).toContain('127.0.0.1');
    expect(own.said()).not.toContain('Warning');
    await own.stop('SIGTERM');
    const open = await serve('--host', '0.0.0.0', '--port', String(await freePort()), '--data', duskwatch.path('six'));
    expect(open.said()).toContain('no accounts yet');
    await open.stop('SIGTERM');
  });
});
