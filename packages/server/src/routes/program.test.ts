import { emptyProgram } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

const program = async (held = smallProgram()) => (await buildServer({ store: memoryStore(held) }).inject('/api/program')).json();

describe('GET /api/program', () => {
  it('says what the program is, and that it is invented', async () => {
    expect(await program()).toEqual({
      name: 'Small',
      invented: true,
      pinnedOn: '2026-07-15',
      today: '2026-07-15',
      farms: ['Hill farm'],
      crops: ['sweet-corn'],
      insects: ['helicoverpa-zea'],
    });
  });

  it('names nobody before anything was recorded', async () => {
    expect(await program(emptyProgram())).toMatchObject({ pinnedOn: null, farms: [], crops: [], insects: [] });
  });
});
