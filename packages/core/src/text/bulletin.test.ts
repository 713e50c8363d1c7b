import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/prepare.ts';
import { checkOf, fieldOf, lureAt, programOf, stageAt, trapOf } from '../advice/test-program.ts';
import { changeOf, FEWEST_FARMS } from '../answers/bulletin.ts';
import { bulletinView } from '../answers/index.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { bulletinHtml, bulletinIn, bulletinText } from './index.ts';

const ON = '2025-07-15';
const daysBefore = (days: number) => formatDay(addDays(day(ON), -days));

/** As many farms as said, each with a field of sweet corn in silk and a trap that is read twice a week. Invented. */
const network = (farms: number, counts: (farm: number) => readonly [before: number, now: number]) => {
  const each = Array.from({ length: farms }, (_, farm) => farm);
  return programOf({
    fields: each.map((n) =>
      fieldOf({
        fieldId: `hidden-${n}`,
        farm: `Secret farm ${n}`,
        name: `Private piece ${n}`,
        latitude: 44.12345,
        longitude: -63.54321,
      }),
    ),
    stages: each.map((n) => stageAt('silk', daysBefore(3), `hidden-${n}`)),
    traps: each.map((n) => trapOf({ trapId: `T-${n}`, station: `Post ${n}`, hungOn: daysBefore(21), informs: [`hidden-${n}`] })),
    lures: each.map((n) => lureAt(daysBefore(10), 28, `T-${n}`)),
    checks: each.flatMap((n) => {
      const [before, now] = counts(n);
      return [
        checkOf(daysBefore(14), 0, { trapId: `T-${n}` }),
        checkOf(daysBefore(7), before, { trapId: `T-${n}` }),
        checkOf(ON, now, { trapId: `T-${n}` }),
      ];
    }),
  });
};
const viewOf = (...program: Parameters<typeof network>) => bulletinView(prepare(network(...program), { on: day(ON) }));

describe('what a bulletin tells', () => {
  it('sums moths and nights of all farms, and sets them against the week before', () => {
    const [earworm] = viewOf(4, () => [7, 70]).insects;
    expect(earworm).toMatchObject({
      design: 'mesh-cone',
      week: { moths: 280, nights: 28, traps: 4, farms: 4, perNight: 10 },
      before: { moths: 28, nights: 28, perNight: 1 },
      change: 'more',
      crops: [{ crop: 'sweet-corn', fields: 4, farms: 4, decide: 4, scout: 0 }],
    });
  });

  it.each(['en', 'es'] as const)('says so in %s, with what to do by when, and never tells anybody to spray', (language) => {
    const text = bulletinText(
      bulletinIn(
        language,
        viewOf(4, () => [7, 70]),
      ),
    );
    for (const part of language === 'en'
      ? ['10 moths a night', 'more than the 1', 'a decision is due in 4', 'by Tue']
      : ['10 polillas por noche', 'más que las 1', 'decisión pendiente en 4', 'a más tardar'])
      expect(text).toContain(part);
    expect(text).not.toMatch(/spray|pulveri|fumig|rocí|aspers/i);
  });

  it('says the same in both languages: block for block and line for line', () => {
    const view = viewOf(5, (farm) => [farm, farm * 9]);
    const shape = (language: 'en' | 'es') => bulletinIn(language, view).blocks.map(({ id, lines }) => [id, lines.length]);
    expect(shape('es')).toEqual(shape('en'));
  });

  it('calls a change clear only when it is: of two weeks that are alike in one network of five, as an interval of 80 % says', () => {
    const { negativeBinomial } = randomFrom(11);
    // Visits that scatter as is assumed, two moths a night in a trap.
    const week = () => {
      const moths = Array.from({ length: 6 }, () => negativeBinomial(14, ASSUMPTIONS.visitDispersionK.value)).reduce(
        (sum, each) => sum + each,
        0,
      );
      return { moths, nights: 42, traps: 6, farms: 6, perNight: moths / 42 };
    };
    const said = Array.from({ length: 1000 }, () => changeOf(week(), week()));
    // 20 % are stated, and 2.5 times the standard error of 1000.
    expect(said.filter((change) => change !== 'unclear').length / 1000).toBeLessThan(0.235);
    expect(said.filter((change) => change !== 'unclear').length / 1000).toBeGreaterThan(0.15);
    expect(changeOf({ ...week(), moths: 10 }, { ...week(), moths: 100 })).toBe('more');
    expect(changeOf({ ...week(), moths: 100 }, { ...week(), moths: 10 })).toBe('fewer');
  });
});

describe('whose a figure is', () => {
  it('stays untold where fewer farms than three stand behind it, and says how often', () => {
    const few = viewOf(FEWEST_FARMS - 1, () => [7, 70]);
    expect(few.insects).toEqual([]);
    expect(few.withheld).toBeGreaterThan(0);
    expect(viewOf(FEWEST_FARMS, () => [7, 70]).insects).toHaveLength(1);
  });

  it('merges crops of too few farms where they are enough together, and leaves them out where not', () => {
    const program = network(6, () => [7, 70]);
    const crops = ['sweet-corn', 'sweet-corn', 'sweet-corn', 'tomato', 'pepper', 'tomato'];
    const mixed = { ...program, fields: program.fields.map((field, n) => ({ ...field, crop: crops[n]! })) };
    const view = bulletinView(prepare(mixed, { on: day(ON) }));
    expect(view.insects[0]!.crops.map(({ crop, farms }) => [crop, farms])).toEqual([
      ['sweet-corn', 3],
      [null, 3],
    ]);
    const fewer = bulletinView(prepare({ ...mixed, fields: mixed.fields.slice(0, 5) }, { on: day(ON) }));
    expect(fewer.insects[0]!.crops.map(({ crop }) => crop)).toEqual(['sweet-corn']);
    expect(fewer.withheld).toBe(2);
  });

  it('names no farm, field, trap, station or place, whatever was counted', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 400 }), (farms, most) => {
        const view = viewOf(farms, (farm) => [farm * 3, (farm * most) % 401]);
        for (const text of [JSON.stringify(view), bulletinText(bulletinIn('en', view)), bulletinText(bulletinIn('es', view))])
          expect(text).not.toMatch(/Secret|Private|hidden-|T-\d|Post \d|latitude|longitude|44\.123|63\.543/);
      }),
      { numRuns: 30 },
    );
  });

  it('gives no difference of one farm: the catch is told of three or more in each of two weeks, or not at all', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { minLength: 3, maxLength: 6 }), (counted) => {
        const program = network(counted.length, () => [7, 70]);
        const checks = program.checks.filter(({ trapId, checkedOn }) => checkedOn !== ON || counted[Number(trapId.slice(2))]);
        const [insect] = bulletinView(prepare({ ...program, checks }, { on: day(ON) })).insects;
        const told = counted.filter(Boolean).length;
        expect(insect?.week?.farms ?? 0).toBe(told >= FEWEST_FARMS ? told : 0);
      }),
    );
  });
});

describe('the bulletin as a page', () => {
  it('shows what was written, whatever signs are in it, and runs none of it', () => {
    const own = { summary: '<script>alert(1)</script> & "so" 🦋\n\nsecond line' };
    const html = bulletinHtml(
      bulletinIn(
        'es',
        viewOf(4, () => [7, 70]),
      ),
      own,
    );
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;so&quot; 🦋</p>');
    expect(html).toContain('second line</p>');
    expect(html).not.toMatch(/<script|<img|<link|https?:/);
    expect(html).toContain('<html lang="es">');
    expect(html).toContain('10 polillas por noche');
  });
});
