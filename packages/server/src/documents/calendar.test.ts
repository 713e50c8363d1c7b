import { type CalendarEntry, emptyProgram } from '@duskwatch/core';
import type { SentEntries } from '@duskwatch/store';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { calendarOf } from './calendar.ts';
import { calendarFaults } from './strict-calendar.testing.ts';

const entry = (uid: string, on: string, change: Partial<CalendarEntry> = {}): CalendarEntry => ({
  uid,
  kind: 'check',
  on,
  overdue: false,
  farm: 'Hill farm',
  station: 'S1',
  insects: ['helicoverpa-zea'],
  fields: [],
  trapIds: ['T1'],
  quantity: null,
  ...change,
});

const NOW = '2026-07-15T06:00:00.000Z';
const LATER = '2026-07-16T06:00:00.000Z';
const program = { settings: emptyProgram({ name: 'Vale; north, "first" \\ part' }).settings, fields: [] };

const make = (entries: readonly CalendarEntry[], sent: SentEntries = {}, now = NOW) =>
  calendarOf({ program, entries, language: 'es', origin: 'https://moths.example', sent, now });

const eventsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => ({
    uid: event.getFirstPropertyValue('uid') as string,
    sequence: Number(event.getFirstPropertyValue('sequence')),
    start: String(event.getFirstPropertyValue('dtstart')),
    end: String(event.getFirstPropertyValue('dtend')),
    stamp: String(event.getFirstPropertyValue('dtstamp')),
    summary: event.getFirstPropertyValue('summary') as string,
    description: event.getFirstPropertyValue('description') as string,
  }));

afterEach(() => vi.unstubAllEnvs());

describe('a calendar', () => {
  it('says days, not hours: a whole day that is the same in every time zone', () => {
    for (const zone of ['UTC', 'America/Halifax', 'Pacific/Kiritimati', 'Pacific/Pago_Pago']) {
      vi.stubEnv('TZ', zone);
      const { text } = make([entry('check.a', '2026-07-31'), entry('check.b', '2028-02-28')]);
      expect(calendarFaults(text)).toEqual([]);
      expect(eventsOf(text).map(({ start, end }) => [start, end])).toEqual([
        ['2026-07-31', '2026-08-01'],
        ['2028-02-28', '2028-02-29'],
      ]);
    }
  });

  it('sent again says the same to the letter; what moved keeps its uid and counts up, what stayed keeps its stamp', () => {
    const first = make([entry('check.a', '2026-07-17'), entry('check.b', '2026-07-18')]);
    const again = make([entry('check.a', '2026-07-17'), entry('check.b', '2026-07-18')], first.sent, LATER);
    expect(again).toEqual(first);
    const moved = make([entry('check.a', '2026-07-16', { overdue: true }), entry('check.b', '2026-07-18')], again.sent, LATER);
    const [before, after] = [eventsOf(first.text), eventsOf(moved.text)];
    expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
    expect(after.map(({ sequence, start, stamp }) => [sequence, start, stamp])).toEqual([
      [1, '2026-07-16', '2026-07-16T06:00:00Z'],
      [0, '2026-07-18', '2026-07-15T06:00:00Z'],
    ]);
    expect(after[0]!.summary).toBe('Revisar trampas: S1 (atrasado)');
  });

  it('counts on when an entry comes back, and forgets it after a year', () => {
    const first = make([entry('decide.a', '2026-07-17', { kind: 'decide' })]);
    const without = make([], first.sent, LATER);
    expect(eventsOf(without.text)).toEqual([]);
    const back = make([entry('decide.a', '2026-07-17', { kind: 'decide' })], without.sent, LATER);
    expect(eventsOf(back.text)[0]!.sequence).toBe(1);
    expect(make([], without.sent, '2027-12-01T00:00:00.000Z').sent).toEqual({});
  });

  it('keeps what people write whole, however odd: an independent parser reads it back', () => {
    const odd = fc.oneof(
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 80 }),
      fc.constant('a,b;c\\d\ne "f" ñ🦋'.repeat(6)),
    );
    fc.assert(
      fc.property(fc.array(odd, { minLength: 1, maxLength: 4 }), (stations) => {
        const entries = stations.map((station, n) => entry(`check.${n}`, '2026-07-17', { station }));
        const { text } = make(entries);
        expect(calendarFaults(text)).toEqual([]);
        const plain = stations.map((station) => `Revisar trampas: ${station}`.replace(/\p{Cc}+/gu, ' '));
        expect(eventsOf(text).map(({ summary }) => summary)).toEqual(plain);
      }),
      { numRuns: 60 },
    );
  });

  it('puts the caution beside the act, and never tells anybody to treat', () => {
    const { text } = make([entry('decide.a', '2026-07-17', { kind: 'decide', station: null })]);
    expect(eventsOf(text)[0]).toMatchObject({ summary: expect.stringMatching(/^Decisión pendiente: gusano elotero/) });
    expect(eventsOf(text)[0]!.description).toContain('Con un asesor con licencia');
  });
});
