import { emptyProgram, type FieldRecord } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { dayInZone, readingDay } from './clock.ts';

const halfPastTwoUtc = new Date('2026-07-15T02:30:00Z');
const field = (timeZone: string | null) => ({ fieldId: 'f', timeZone }) as FieldRecord;

describe('the day a program is read on', () => {
  it('is still the evening before in a zone west of Greenwich', () => {
    expect(dayInZone('America/Halifax', halfPastTwoUtc)).toBe('2026-07-14');
    expect(dayInZone('Pacific/Auckland', halfPastTwoUtc)).toBe('2026-07-15');
  });

  it('is today where the first field with a zone lies', () => {
    const program = { ...emptyProgram(), fields: [field(null), field('America/Halifax')] };
    expect(readingDay(program, halfPastTwoUtc)).toBe('2026-07-14');
  });

  it('is the pinned day of a program that stopped', () => {
    expect(readingDay(emptyProgram({ pinnedOn: '2024-07-10' }), halfPastTwoUtc)).toBe('2024-07-10');
  });

  it('falls back to the machine when a zone does not exist', () => {
    expect(dayInZone('Nowhere/Land', halfPastTwoUtc)).toBe(dayInZone(null, halfPastTwoUtc));
  });
});
