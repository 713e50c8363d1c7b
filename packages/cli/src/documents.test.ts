import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { main } from './duskwatch.ts';

/** Runs a command on a fresh folder of the invented demo. */
async function ran(...args: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-documents-'));
  const said: string[] = [];
  const keep = (part: string | Uint8Array) => said.push(String(part)) > 0;
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(keep),
    vi.spyOn(process.stderr, 'write').mockImplementation(keep),
  ];
  onTestFinished(() => {
    for (const spy of spies) spy.mockRestore();
    process.exitCode = 0;
    rmSync(folder, { recursive: true, force: true });
  });
  const program = join(folder, 'demo');
  await main(['demo', '--folder', program]);
  const out = join(folder, 'out');
  await main([args[0]!, program, '--out', out, ...args.slice(1)]);
  return { out, said: said.join(''), exit: process.exitCode };
}

describe('documents from the command line', () => {
  it('labels name their sheets and from how far they are read', async () => {
    const { out, said, exit } = await ran('labels', '--grid', 'a4-3x7', '--origin', 'https://moths.example', '--contact', 'Ida');
    expect(exit).toBe(0);
    expect(said).toMatch(/\d+ labels on \d+ sheets\. Trap codes are read from \d\.\d–\d\.\d m/);
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('labels on no known sheet are refused, and the sheets listed', async () => {
    const { said, exit } = await ran('labels', '--grid', 'a5', '--origin', 'https://moths.example');
    expect(exit).toBe(2);
    expect(said).toContain('A4, 3 × 7 labels of 63.5 × 38.1 mm');
  });

  it('a checklist and a calendar are written', async () => {
    const checklist = await ran('checklist', '--design', 'mesh-cone', '--language', 'es');
    expect([checklist.exit, readFileSync(checklist.out).subarray(0, 5).toString()]).toEqual([0, '%PDF-']);
    const calendar = await ran('calendar');
    const events = new ICAL.Component(ICAL.parse(readFileSync(calendar.out, 'utf8'))).getAllSubcomponents('vevent');
    expect(events.length).toBeGreaterThan(3);
  });
});
