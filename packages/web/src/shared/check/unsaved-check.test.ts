import { checkSchema } from '@duskwatch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkFrom,
  choose,
  mayCount,
  missing,
  newUnsavedCheck,
  OFFERED_REASONS,
  type PadKey,
  press,
  typeCount,
  type UnsavedCheck,
  unsavedOf,
} from './unsaved-check.ts';

const visit = { trapId: 'T1', checkedOn: '2025-07-12', visit: 1 };
const fresh = newUnsavedCheck(28);
const pressed = (...keys: PadKey[]) => keys.reduce(press, fresh);

describe('the count pad', () => {
  it('starts without a count, which is not zero, and is not saved so', () => {
    expect(fresh).toMatchObject({ target: '', others: '' });
    expect(missing(fresh)).toBe('count');
  });

  it('writes 0 for “none”, and a digit after it counts anew', () => {
    expect(pressed('1', 'none').target).toBe('0');
    expect(missing(pressed('none'))).toBeNull();
    expect(pressed('none', '7').target).toBe('7');
  });

  it('erases back to not counted', () => {
    expect(pressed('1', '2', 'erase').target).toBe('1');
    expect(missing(pressed('1', 'erase'))).toBe('count');
  });

  it('keeps target and others apart', () => {
    const both = press(press({ ...pressed('1', '2'), box: 'others' }, '3'), '0');
    expect(checkFrom(both, visit, null, null)).toMatchObject({ targetCount: 12, otherCount: 30 });
  });

  it('never writes a count that a check may not hold, whatever is pressed or typed', () => {
    const keys = fc.array(fc.constantFrom<PadKey>('0', '1', '5', '9', 'none', 'erase'), { maxLength: 30 });
    fc.assert(
      fc.property(keys, fc.string(), (some, text) => {
        const draft = typeCount(some.reduce(press, fresh), 'others', text);
        if (missing(draft) === null) checkSchema.parse(checkFrom(draft, visit, null, null));
      }),
    );
  });
});

describe('a draft at a trap', () => {
  it('needs no count at an unfit trap, but why it is unfit, whatever the language', () => {
    const unfit = choose(fresh, 'unfit');
    expect(missing(unfit)).toBe('unfit-reason');
    const down = { ...unfit, unfit: 'down' as const, note: ' by deer ' };
    expect(missing(down)).toBeNull();
    expect(checkFrom(down, visit, null, null)).toMatchObject({
      targetCount: null,
      condition: 'unfit',
      unfitReason: 'down',
      note: 'by deer',
    });
    expect(choose(down, 'fit').unfit).toBeNull();
    expect(missing(choose(down, 'unfit'))).toBe('unfit-reason');
  });

  it('at an unfit trap shows no box to write a zero in, unless it is full or something was counted before', () => {
    const down = { ...choose(fresh, 'unfit'), unfit: 'down' as const };
    expect(mayCount(down)).toBe(false);
    expect(mayCount({ ...down, unfit: 'full' })).toBe(true);
    expect(mayCount({ ...down, target: '7' })).toBe(true);
    expect(mayCount(fresh)).toBe(true);
  });

  it('asks what became of a lure that is due, and takes either answer', () => {
    const counted = pressed('3');
    expect([missing(counted), missing(counted, true)]).toEqual([null, 'lure']);
    expect(missing({ ...counted, lureChanged: true }, true)).toBeNull();
    expect(missing({ ...counted, lureLeft: true }, true)).toBeNull();
    expect(missing(fresh, true)).toBe('count');
  });

  it('never assumes a new lure, also where one is due', () => {
    expect(fresh.lureChanged).toBe(false);
  });

  it('comes back from its own check, to be corrected', () => {
    const condition = fc.constantFrom('fit' as const, 'doubtful' as const, 'unfit' as const);
    const drafts = fc
      .record({
        target: fc.nat({ max: 999_999 }).map(String),
        others: fc.option(fc.nat({ max: 999_999 }).map(String), { nil: '' }),
        condition,
        emptied: fc.boolean(),
        note: fc.constantFrom('', 'wet', 'full of beetles', 'down. again', 'other'),
        reason: fc.constantFrom(...OFFERED_REASONS),
      })
      .map(({ reason, ...rest }): UnsavedCheck => ({ ...fresh, ...rest, unfit: rest.condition === 'unfit' ? reason : null }));
    fc.assert(
      fc.property(drafts, (draft) => {
        const check = checkFrom(draft, visit, null, null);
        expect(unsavedOf(check, { changed: false, lifeDays: 28 })).toEqual(draft);
      }),
    );
  });
});
