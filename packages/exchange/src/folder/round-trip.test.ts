import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { RECORD_KINDS, recordSchemas } from '@duskwatch/core';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readTable } from '../table/read-table.ts';
import { writeTable } from '../table/write-table.ts';
import { anyProgram } from '../testing/any-program.ts';
import { readProgramFolder } from './read-folder.ts';
import { writeProgramFolder } from './write-folder.ts';

let root: string;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'folder-'));
});
afterAll(() => rm(root, { recursive: true }));

describe('a program folder', () => {
  test('gives back every program exactly: quotes, commas, line ends and any script in its texts', async () => {
    let run = 0;
    await fc.assert(
      fc.asyncProperty(anyProgram, async (program) => {
        run += 1;
        const dir = join(root, `round-${run}`);
        await writeProgramFolder(program, dir);
        expect(await readProgramFolder(dir)).toEqual({ ok: true, value: program });
      }),
      { numRuns: 12 },
    );
  });

  test('holds each table as text that reads back as the same records', () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        for (const kind of RECORD_KINDS) {
          const read = readTable(kind, writeTable<typeof kind>(kind, program[kind]));
          expect(read.ok && read.value.records).toEqual(program[kind]);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('holds only records that the schemas of the API and the store accept too', () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        for (const kind of RECORD_KINDS) {
          for (const record of program[kind]) expect(recordSchemas[kind].parse(record)).toEqual(record);
        }
      }),
      { numRuns: 50 },
    );
  });
});
