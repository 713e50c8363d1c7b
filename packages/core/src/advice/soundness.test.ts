import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { CheckRecord } from '../records/schema.ts';
import { english, spanish } from '../text/index.ts';
import { adviseCell } from './decide.ts';
import { prepare, withChecks } from './prepare.ts';
import { checkOf, evidenceOf, fieldOf, lureAt, programOf, stageAt, trapOf } from './test-program.ts';

const HUNG = day('2025-05-01');
const NIGHTS = 134;
const on = (night: number) => formatDay(addDays(HUNG, night));
const options = { temperature: 'F', dayOrder: 'month-day' } as const;

/** Twelve traps of a kind: T1 for field F1, eleven others for F2, each of which catches about 1,200 in 134 nights. */
function network(count: (night: number) => number, nights = NIGHTS, over: Partial<Program> = {}): Program {
  const ids = Array.from({ length: 12 }, (_, t) => `T${t + 1}`);
  const checks: CheckRecord[] = [];
  for (let visit = 1; visit <= Math.floor((nights * 2) / 7); visit++) {
    const night = Math.round(3.5 * visit);
    ids.forEach((trapId, t) => {
      const usual = 31 + 9 * Math.sin(visit * 2.1 + t) + 6 * Math.cos(1.3 * t);
      checks.push(checkOf(on(night), t === 0 ? count(night) : Math.round(usual), { trapId }));
    });
  }
  return programOf({
    fields: [fieldOf(), fieldOf({ fieldId: 'F2', name: 'Field two' })],
    traps: ids.map((trapId, t) => trapOf({ trapId, station: trapId, hungOn: on(0), informs: [t === 0 ? 'F1' : 'F2'] })),
    stages: [stageAt('silk', on(Math.max(0, nights - 6)))],
    checks,
    ...over,
  });
}
const advised = (program: Program, night: number) =>
  adviseCell(prepare(program, { on: addDays(HUNG, night) }), 'F1', 'helicoverpa-zea');
const nothing = () => 0;
const usual = () => 30;

describe('a silent trap among loud neighbours is not a quiet field', () => {
  it('nothing in 134 nights while eleven others catch about 1,200 each: the field is out of sight, not quiet', () => {
    const advice = advised(network(nothing), NIGHTS);
    expect(advice).toMatchObject({ verb: 'blind', by: on(NIGHTS), rate: null, confidence: null });
    const [doubt] = evidenceOf(advice, 'trap-doubt');
    expect(advice.because[0]).toBe(doubt);
    expect(doubt).toMatchObject({ trapId: 'T1', doubt: 'silent', degree: 'strong', since: on(0), count: 0 });
    expect(doubt!.expected).toBeGreaterThan(1000);
    expect(english(options).headline(advice)).toMatch(
      /^Trap T1 has caught nothing since .*: look at its lure, opening and place/,
    );
    expect(spanish(options).headline(advice)).toMatch(/^La trampa T1 no ha capturado nada desde .*: mire su atrayente/);
  });

  it('while the doubt is moderate the verb stays, at low confidence and with the doubt in its first line', () => {
    const nights = [...Array(NIGHTS).keys()].filter((night) => {
      const advice = advised(network(nothing, night), night);
      return night > 6 && evidenceOf(advice, 'trap-doubt')[0]?.degree === 'moderate';
    });
    expect(nights.length).toBeGreaterThan(5);
    const advice = advised(network(nothing, nights[0]), nights[0]!);
    expect(advice).toMatchObject({ verb: 'watch', rate: 0, confidence: 'low' });
    expect(advice.because[0]).toMatchObject({ kind: 'trap-doubt', degree: 'moderate' });
    expect(english(options).headline(advice)).toMatch(/^Trap T1 has caught nothing .* Nothing is due on/);
    expect(spanish(options).headline(advice)).toMatch(/^La trampa T1 no ha capturado nada/);
    // A dead trap is doubted before the others have caught two hundred each.
    expect(evidenceOf(advice, 'trap-doubt')[0]!.expected).toBeLessThan(200);
  });

  it('recovers when the trap catches again, at the very check that says so', () => {
    const program = network(nothing);
    const prepared = prepare(program, { on: addDays(HUNG, NIGHTS) });
    expect(adviseCell(prepared, 'F1', 'helicoverpa-zea').verb).toBe('blind');
    const caught = { ...program, checks: [...program.checks, checkOf(on(NIGHTS), 4, { visit: 2 })] };
    const advice = adviseCell(withChecks(prepared, caught, new Set(['T1'])), 'F1', 'helicoverpa-zea');
    expect(evidenceOf(advice, 'trap-doubt')).toEqual([]);
    expect(advice.verb).not.toBe('blind');
  });

  it('recovers when it is put right, and is doubted again once the others have caught and it has not', () => {
    const lures = [lureAt(on(0), 200), lureAt(on(129), 28)];
    expect(advised(network(nothing, NIGHTS, { lures }), 130).verb).toBe('watch');
    expect(advised(network(nothing, NIGHTS, { lures }), NIGHTS).verb).toBe('blind');
    const mended = network(nothing);
    const torn = {
      ...mended,
      checks: mended.checks.map((check) =>
        check.trapId === 'T1' && check.checkedOn === on(130) ? { ...check, condition: 'doubtful' as const } : check,
      ),
    };
    expect(evidenceOf(advised(torn, 131), 'trap-doubt')).toEqual([]);
  });

  it('is believed where somebody answered that the place is just so', () => {
    const answers = [{ question: 'silent-trap T1 2025', answer: 'right', answeredOn: on(120), note: null }] as const;
    const told = advised(network(nothing, NIGHTS, { answers }), NIGHTS);
    expect(told.verb).toBe('watch');
    expect(evidenceOf(told, 'trap-doubt')).toEqual([]);
    expect(advised(network(nothing, 119, { answers }), 119).verb).toBe('blind');
  });

  it('leaves the field to its other trap where there is one', () => {
    const program = network(nothing);
    const two = { ...program, traps: program.traps.map((trap) => (trap.trapId === 'T2' ? { ...trap, informs: ['F1'] } : trap)) };
    const advice = advised(two, NIGHTS);
    expect(advice.rate).toBeGreaterThan(5);
    expect(evidenceOf(advice, 'rate')[0]!.checks.map(({ trapId }) => trapId)).not.toContain('T1');
    expect(evidenceOf(advice, 'trap-doubt')).toHaveLength(1);
  });

  it('a trap in a poor place, or one that fell silent as the others did, is not doubted', () => {
    expect(
      evidenceOf(
        advised(
          network((night) => (night % 3 === 0 ? 1 : 0)),
          NIGHTS,
        ),
        'trap-doubt',
      ),
    ).toEqual([]);
    expect(evidenceOf(advised(network(usual), NIGHTS), 'trap-doubt')).toEqual([]);
  });
});

describe('a trap that catches many times what its neighbours do', () => {
  it('keeps its verb, at low confidence and with the doubt in its first line: its moths are there', () => {
    const advice = advised(
      network(() => 190),
      NIGHTS,
    );
    expect(advice).toMatchObject({ verb: 'decide', confidence: 'low' });
    expect(advice.because[0]).toMatchObject({ kind: 'trap-doubt', doubt: 'loud', degree: 'moderate', trapId: 'T1' });
    expect(english(options).headline(advice)).toMatch(/^Trap T1 has caught \d+ since .* A decision on/);
    expect(spanish(options).headline(advice)).toMatch(/^La trampa T1 ha capturado \d+ desde/);
  });

  it('is not doubted at three times, nor after the lure was changed until it does so again', () => {
    expect(
      evidenceOf(
        advised(
          network(() => 90),
          NIGHTS,
        ),
        'trap-doubt',
      ),
    ).toEqual([]);
    const lures = [lureAt(on(0), 200), lureAt(on(130), 28)];
    expect(
      evidenceOf(
        advised(
          network(() => 190, NIGHTS, { lures }),
          131,
        ),
        'trap-doubt',
      ),
    ).toEqual([]);
  });
});
