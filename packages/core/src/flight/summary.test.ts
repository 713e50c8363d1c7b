import { describe, expect, it } from 'vitest';
import { after, season } from '../catch/season.testing.ts';
import { peakSoFar } from './peak.ts';
import { summariseFlight } from './summary.ts';

const rising = season([
  [4, 0],
  [8, 4],
  [11, 15],
  [18, 28],
]).history;

describe('the flight so far', () => {
  it('peaks at the highest nightly rate, not at the highest count', () => {
    expect(peakSoFar([rising])).toEqual({ from: after(8), to: after(11), perNight: 5, trapId: 'T1' });
  });

  it('has its peak in one trap, and at the earlier of equal ones', () => {
    const other = season([[9, 45]], { trapId: 'T2' }).history;
    expect(peakSoFar([rising, other])).toMatchObject({ trapId: 'T2', perNight: 5, to: after(9) });
    expect(peakSoFar([other, rising])).toEqual(peakSoFar([rising, other]));
  });

  it('has no peak before the first moth', () => {
    expect(peakSoFar([season([[4, 0]]).history])).toBeNull();
  });

  it('has a biofix only under a rule or by the user, never merely by a first catch', () => {
    const without = summariseFlight(null, [rising], after(18));
    expect(without.firstCatch).toMatchObject({ on: after(8) });
    expect(without.biofix).toBeNull();
    expect(summariseFlight({ kind: 'intense-capture', moths: 9, nights: 2 }, [rising], after(18)).biofix).toMatchObject({
      on: after(11),
    });
    expect(summariseFlight(null, [rising], after(18), after(6)).biofix).toMatchObject({ on: after(6), rule: { kind: 'user' } });
  });

  it('of nothing, one, five and four moths a night has no clear way yet', () => {
    expect(summariseFlight(null, [rising], after(18)).trend).toMatchObject({ direction: 'unclear', visits: 4 });
  });
});
