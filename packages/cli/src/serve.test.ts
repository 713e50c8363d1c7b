import { existsSync } from 'node:fs';
import { connect } from 'node:net';
import { describe, expect, it } from 'vitest';
import { commandUnderTest } from './testing/command.ts';
import { freePort } from './testing/free-port.ts';
import { smallFolder } from './testing/small-folder.ts';

const duskwatch = commandUnderTest();

/** Starts serving and waits for the address it prints. */
async function serve(...args: readonly string[]) {
  const child = duskwatch.start('serve', ...args);
  const closed = new Promise<number | null>((resolve) => child.on('close', resolve));
  let said = '';
  child.stderr!.on('data', (part) => {
    said += part;
  });
  child.stdout!.on('data', (part) => {
    said += part;
  });
  /** What the first group of a pattern matches, as soon as it is printed. */
  const hears = (pattern: RegExp) =>
    new Promise<string>((resolve, reject) => {
      const look = () => {
        const found = pattern.exec(said);
        if (found) resolve(found[1]!);
      };
      look();
      child.stdout!.on('data', look);
      closed.then((exit) => reject(new Error(`ended with ${exit}: ${said}`)));
    });
  const address = await hears(/(http:\/\/\S+)/);
  const stop = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    return closed;
  };
  return { address, stop, hears, said: () => said };
}

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

  it('keeps the demo and a program of one’s own in databases and at addresses of their own, and leads to and fro', async () => {
    const args = ['--demo', '--data', duskwatch.path('both'), '--port', String(await freePort())];
    const first = await serve(...args);
    const ask = async (address: string, path: string, method = 'GET') =>
      (await fetch(`${address}api/${path}`, { method })).json() as Promise<{ readonly port: number }>;
    expect(await ask(first.address, 'other-program')).toEqual({ kind: 'own' });
    const { port } = await ask(first.address, 'other-program', 'POST');
    // Asked twice, it is opened once.
    expect(await ask(first.address, 'other-program', 'POST')).toEqual({ port });
    const own = `http://127.0.0.1:${port}/`;
    expect(await ask(own, 'program')).toMatchObject({ invented: false, farms: [] });
    expect(await ask(own, 'other-program')).toEqual({ kind: 'demo' });
    expect(`http://127.0.0.1:${(await ask(own, 'other-program', 'POST')).port}/`).toBe(first.address);
    expect(await first.stop('SIGTERM')).toBe(0);

    // What is imported goes into one's own, and from then on that one comes first; the demo is kept beside it.
    const folder = duskwatch.folder('own-folder', smallFolder);
    expect((await duskwatch.run('import', folder, '--data', duskwatch.path('both'))).exit).toBe(0);
    const again = await serve(...args);
    expect(await ask(again.address, 'program')).toMatchObject({ invented: false, farms: ['Hill farm'] });
    const { port: demoPort } = await ask(again.address, 'other-program', 'POST');
    expect(await ask(`http://127.0.0.1:${demoPort}/`, 'program')).toMatchObject({ invented: true });
    expect(again.said()).not.toContain('Loaded');
    await again.stop('SIGTERM');
  });

  it('leaves a demo where it was loaded, with a program of one’s own beside it', async () => {
    const data = duskwatch.path('demo-here');
    expect((await duskwatch.run('demo', '--data', data)).exit).toBe(0);
    const { address, stop } = await serve('--data', data, '--port', String(await freePort()));
    expect(await (await fetch(`${address}api/program`)).json()).toMatchObject({ invented: true });
    const { port } = (await (await fetch(`${address}api/other-program`, { method: 'POST' })).json()) as { readonly port: number };
    expect(await (await fetch(`http://127.0.0.1:${port}/api/program`)).json()).toMatchObject({ invented: false });
    await stop('SIGTERM');
    expect(existsSync(duskwatch.path('demo-here', 'own', 'duskwatch.sqlite'))).toBe(true);
  });

  it('does not wait for a browser that keeps its connection open', async () => {
    const port = await freePort();
    const { stop } = await serve('--port', String(port), '--data', duskwatch.path('open'));
    const held = connect(port, '127.0.0.1');
    await new Promise<void>((resolve) => held.once('connect', resolve));
    held.write('GET /api/health HTTP/1.1\r\nHost: localhost\r\n\r\n');
    await new Promise((resolve) => held.once('data', resolve));
    // The browser never closes it: a server that waited for that would not end.
    expect(await stop('SIGTERM')).toBe(0);
    held.destroy();
  });

  it('does not wait for ever for a request that never comes to its end', async () => {
    const port = await freePort();
    const { stop } = await serve('--port', String(port), '--data', duskwatch.path('hung'));
    const hung = connect(port, '127.0.0.1');
    await new Promise<void>((resolve) => hung.once('connect', resolve));
    hung.on('error', () => undefined);
    const head = `POST /api/revisions HTTP/1.1\r\nHost: localhost\r\nOrigin: http://localhost:${port}\r\n`;
    hung.write(`${head}Content-Type: application/json\r\nContent-Length: 1000\r\n\r\n{"sentAt":`);
    // Answered after it, so that the other is under way.
    expect((await fetch(`http://127.0.0.1:${port}/api/health`)).status).toBe(200);
    // The client goes on holding it: a server that waited for its end would never stop.
    expect(await stop('SIGTERM')).toBe(0);
    hung.destroy();
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

  it('listens to this machine alone, and to others only with accounts', async () => {
    const own = await serve('--port', String(await freePort()), '--data', duskwatch.path('five'));
    expect(own.address).toContain('127.0.0.1');
    await own.stop('SIGTERM');
    for (const open of [
      ['--host', '0.0.0.0'],
      ['--host', '::'],
      ['--origin', 'https://moths.example'],
    ]) {
      const refused = await duskwatch.run('serve', ...open, '--data', duskwatch.path('six'));
      expect(refused.exit).toBe(2);
      expect(refused.err).toContain('--accounts');
    }
    expect((await duskwatch.run('serve', '--accounts', '--origin', 'moths.example/x')).exit).toBe(2);
  });

  it('prints a code with which the first coordinator joins, and no more codes after that', async () => {
    const args = ['--accounts', '--data', duskwatch.path('seven'), '--port', String(await freePort())];
    const first = await serve(...args);
    const code = await first.hears(/^ {2}(\S+)$/m);
    expect((await fetch(`${first.address}api/week`)).status).toBe(401);
    const joined = await fetch(`${first.address}api/first-person`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code, name: 'Ida Brook', password: 'three herons over wet clover' }),
    });
    expect(await joined.json()).toMatchObject({ person: { name: 'Ida Brook', role: 'coordinator' } });
    await first.stop('SIGTERM');

    const second = await serve(...args, '--invite-coordinator');
    const link = await second.hears(/http\S+\/join\/(\S+)/);
    expect(second.said()).not.toContain('types this code');
    const offered = await fetch(`${second.address}api/invitations/by-token/${link}`);
    expect(await offered.json()).toMatchObject({ role: 'coordinator', name: null });
    await second.stop('SIGTERM');
  });
});
