import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, lureAt, programOf, stageAt, trapOf, treatmentOf } from '../advice/test-program.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { roundLater, roundLengthKm, roundOrder, roundView } from './index.ts';

const program = programOf({
  fields: [fieldOf()],
  traps: [
    trapOf({ station: 'A', latitude: 44, longitude: -64 }),
    trapOf({ trapId: 'T2', station: 'B', latitude: 44.1, longitude: -64.2 }),
    trapOf({ trapId: 'T3', station: 'C', latitude: 44.3, longitude: -64.1 }),
  ],
  stages: [stageAt('tassel')],
  lures: [lureAt('2025-07-01', 28), lureAt('2025-07-05', null, 'T2')],
  checks: [
    checkOf('2025-07-05', 4),
    checkOf('2025-07-09', 6),
    checkOf('2025-07-13', 8),
    checkOf('2025-07-08', 1, { trapId: 'T2' }),
    checkOf('2025-07-11', 2, { trapId: 'T2' }),
    checkOf('2025-07-14', 3, { trapId: 'T2' }),
    checkOf('2025-07-12', null, { trapId: 'T3', condition: 'unfit' }),
  ],
  treatments: [treatmentOf('2025-07-13')],
});
const nothing = { checks: [], lures: [], stages: [], skips: [] };
const on = (date: string, records: Program = program) => roundView(prepare(records, { on: day(date) }));

describe('a round read after days without signal', () => {
  it('is on every later day what the server would have said, when nobody wrote anything', () => {
    const fetched = on('2025-07-14');
    for (let date = 14; date <= 31; date++) {
      const later = `2025-07-${date}`;
      expect(roundLater(fetched, later, nothing)).toEqual(on(later));
    }
  });

  it('counts the scout’s own visit, new lure and stage as the server will', () => {
    const check = checkOf('2025-07-17', 5);
    const lure = lureAt('2025-07-17', 28);
    const stage = { ...stageAt('silk'), observedOn: '2025-07-17' };
    const known = {
      ...program,
      checks: [...program.checks, check],
      lures: [...program.lures, lure],
      stages: [...program.stages, stage],
    };
    const later = roundLater(on('2025-07-14'), '2025-07-18', { ...nothing, checks: [check], lures: [lure], stages: [stage] });
    expect(later).toEqual(on('2025-07-18', known));
    expect(later.stops.find((stop) => stop.station === 'A')).toMatchObject({ due: false });
  });

  it('asks for a trap that the scout left unfit to be put right from the next day', () => {
    const check = checkOf('2025-07-17', null, { condition: 'unfit' });
    const dueOn = (date: string) =>
      roundLater(on('2025-07-14'), date, { ...nothing, checks: [check] }).stops.find((stop) => stop.station === 'A')!.due;
    expect([dueOn('2025-07-17'), dueOn('2025-07-18')]).toEqual([false, true]);
  });

  it('says why a trap was passed by, until somebody was there', () => {
    const skips = [{ trapId: 'T2', skippedOn: '2025-07-17', reason: 'locked' as const, note: null }];
    const check = checkOf('2025-07-18', 2, { trapId: 'T2' });
    const at = (date: string, written: Partial<typeof nothing>) =>
      roundLater(on('2025-07-14'), date, { ...nothing, ...written } as typeof nothing);
    const there = (view: ReturnType<typeof at>) =>
      view.stops.flatMap(({ traps }) => traps).find(({ trapId }) => trapId === 'T2')!;
    const passed = at('2025-07-17', { skips: skips as never });
    expect(passed).toEqual(on('2025-07-17', { ...program, skips }));
    expect(there(passed)).toMatchObject({ due: true, skipped: { on: '2025-07-17', reason: 'locked' } });
    expect(there(at('2025-07-18', { skips: skips as never, checks: [check] as never })).skipped).toBeNull();
    expect(there(on('2025-07-18', { ...program, skips, checks: [...program.checks, check] })).skipped).toBeNull();
  });

  it('tells at the stop what is in doubt about its trap, until it is put right, has a fresh lure or catches again', () => {
    const ids = Array.from({ length: 12 }, (_, i) => `T${i + 1}`);
    const dates = Array.from({ length: 14 }, (_, i) => formatDay(addDays(day('2025-06-01'), 7 * i)));
    const doubted = programOf({
      fields: [fieldOf()],
      traps: ids.map((trapId) => trapOf({ trapId, station: trapId, hungOn: '2025-05-25' })),
      stages: [stageAt('silk', '2025-08-28')],
      lures: [lureAt('2025-05-25', 120)],
      checks: dates.flatMap((date) => ids.map((trapId, i) => checkOf(date, i === 0 ? 0 : 60 + 2 * i, { trapId }))),
    });
    const fetched = on('2025-09-01', doubted);
    const doubt = (view: typeof fetched) => view.stops.flatMap(({ traps }) => traps).find(({ trapId }) => trapId === 'T1')!.doubt;
    expect(doubt(fetched)).toMatchObject({ kind: 'silent', nights: 98, count: 0 });
    expect(doubt(fetched)!.expected).toBeCloseTo(14 * 72, 0);
    expect(fetched.stops.flatMap(({ traps }) => traps).filter((trap) => trap.doubt)).toHaveLength(1);

    const later = (written: Partial<Parameters<typeof roundLater>[2]>) =>
      doubt(roundLater(fetched, '2025-09-04', { ...nothing, ...written }));
    expect(later({})).toEqual(doubt(fetched));
    expect(later({ checks: [checkOf('2025-09-03', 0)] })).toEqual(doubt(fetched));
    for (const written of [
      { ...nothing, checks: [checkOf('2025-09-03', 3)] },
      { ...nothing, checks: [checkOf('2025-09-03', 0, { condition: 'doubtful' })] },
      { ...nothing, lures: [lureAt('2025-09-03', 28)] },
    ]) {
      expect(later(written)).toBeNull();
      const checks = [...doubted.checks, ...written.checks];
      const lures = [...doubted.lures, ...written.lures];
      expect(doubt(on('2025-09-04', { ...doubted, checks, lures }))).toBeNull();
    }
  });

  it('leaves a newer visit of somebody else standing over an own older one', () => {
    const later = roundLater(on('2025-07-14'), '2025-07-15', { ...nothing, checks: [checkOf('2025-07-10', 99)] });
    expect(later).toEqual(on('2025-07-15'));
  });
});

describe('the order of a round', () => {
  const stop = (index: number) => ({
    ...on('2025-07-14').stops[0]!,
    station: `S${index}`,
    latitude: 40 + ((index * 7) % 9) / 100,
    longitude: -64,
  });

  it('is the shortest from the station one starts at, and as long as its own legs', () => {
    const { stops, lengthKm } = roundOrder(
      Array.from({ length: 9 }, (_, index) => stop(index)),
      'S0',
    );
    expect(stops.map(({ latitude }) => latitude)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8].map((step) => 40 + step / 100));
    expect(roundLengthKm(stops)).toBeCloseTo(lengthKm, 9);
    // 0.08° of latitude on a sphere of 6371.0088 km.
    expect(lengthKm).toBeCloseTo((0.08 * Math.PI * 6371.0088) / 180, 6);
  });

  it('of very many stations is the server’s, begun where one stands', () => {
    const { stops } = roundOrder(
      Array.from({ length: 70 }, (_, index) => stop(index)),
      'S42',
    );
    expect(stops.map(({ station }) => station).slice(0, 2)).toEqual(['S42', 'S43']);
    expect(new Set(stops.map(({ station }) => station)).size).toBe(70);
  });
});
