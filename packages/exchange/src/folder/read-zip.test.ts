import { emptyProgram } from '@duskwatch/core';
import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { anyProgram } from '../testing/any-program.ts';
import { programFiles } from './program-files.ts';
import { isProgramZip, readProgramZip } from './read-zip.ts';

const zipOf = (files: Iterable<readonly [string, string]>, folder = '') =>
  zipSync(Object.fromEntries([...files].map(([name, text]) => [`${folder}${name}`, strToU8(text)])));

test('a program packed as a zip reads back as the same program, whatever its folder is called', () => {
  fc.assert(
    fc.property(anyProgram, fc.constantFrom('', 'season/', 'a/b/'), (program, folder) => {
      const zip = zipOf(programFiles(program), folder);
      expect(isProgramZip(zip)).toBe(true);
      const read = readProgramZip(zip, 'program.zip');
      expect(read.ok && read.value).toEqual({ ...emptyProgram(), ...program });
    }),
    { numRuns: 25 },
  );
});

test('what is no program, or only part of one, is refused with what is missing', () => {
  expect(isProgramZip(zipOf([['xl/workbook.xml', '<x/>']]))).toBe(false);
  expect(isProgramZip(strToU8('moths'))).toBe(false);
  expect(isProgramZip(new Uint8Array())).toBe(false);
  const fields = ['fields.csv', 'field_id,farm,name,crop\na,Hill,North,sweet-corn\n'] as const;
  const part = readProgramZip(zipOf([fields]), 'program.zip');
  expect(part.ok || part.problems.map(({ where }) => where.file)).toEqual(['traps.csv', 'checks.csv']);
  const whole = zipOf([fields, ['traps.csv', 'trap_id\n'], ['checks.csv', 'trap_id\n']]);
  expect(readProgramZip(whole.slice(0, whole.length - 40), 'program.zip').ok).toBe(false);
});

test('a zip that unpacks to far more than a program is not unpacked', () => {
  const bomb = zipSync({ 'fields.csv': new Uint8Array(310e6) }, { level: 9 });
  expect(isProgramZip(bomb)).toBe(true);
  const read = readProgramZip(bomb, 'program.zip');
  expect(read.ok || read.problems[0]!.got).toContain('unpacks to 310 MB');
});
