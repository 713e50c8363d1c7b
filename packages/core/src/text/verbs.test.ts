import { describe, expect, it } from 'vitest';
import {
  adviceOn,
  checkOf,
  evidenceOf,
  fieldOf,
  lureAt,
  ruleOf,
  stageAt,
  steadyWeather,
  trapOf,
  treatmentOf,
} from '../advice/test-program.ts';
import type { Advice } from '../advice/types.ts';
import { english, spanish } from './index.ts';

const en = english({ temperature: 'F' });
const es = spanish({ temperature: 'F' });

const silk = { stages: [stageAt('silk', '2025-07-05')], lures: [lureAt('2025-07-01')] };
const borer = { ...silk, traps: [trapOf({ insect: 'ostrinia-nubilalis', design: 'bucket' })] };
const sampleOf = (unitsExamined: number, unitsInfested: number, over: object = {}) => ({
  fieldId: 'F1',
  insect: 'helicoverpa-zea',
  sampledOn: '2025-07-08',
  kind: 'ears',
  unitsExamined,
  unitsInfested,
  totalCount: null,
  ...over,
});

/** What the first line must say, in both languages, whatever the rest of its wording. */
function firstLine(advice: Advice, said: { readonly en: readonly string[]; readonly es: readonly string[] }) {
  for (const part of said.en) expect(en.headline(advice)).toContain(part);
  for (const part of said.es) expect(es.headline(advice)).toContain(part);
}

const all = (advice: Advice, wording: typeof en) => advice.because.map(wording.evidence).join('\n');

describe('Decide says what is due, by when, with whom, and how close it is', () => {
  it('a catch far above its rule: no doubt is cast on it', () => {
    const advice = adviceOn('2025-07-11', { ...silk, checks: [checkOf('2025-07-11', 200)] });
    firstLine(advice, {
      en: ['decision on corn earworm', 'by Sat 12 July', 'licensed adviser', 'every 3 days'],
      es: ['decidir sobre el gusano elotero', 'a más tardar el sáb 12 de julio', 'asesor autorizado', 'cada 3 días'],
    });
    expect(en.headline(advice)).not.toContain('close');
    expect(es.headline(advice)).not.toContain('cerca');
  });

  it('a point just above its rule whose interval holds the rule says so in the first line', () => {
    const rules = [ruleOf({ threshold: 1 })];
    const advice = adviceOn('2025-07-08', {
      ...silk,
      rules,
      traps: [trapOf({ design: 'bucket' })],
      checks: [checkOf('2025-07-08', 8)],
    });
    expect(advice).toMatchObject({ verb: 'decide' });
    expect(advice.interval![0]).toBeLessThan(1);
    firstLine(advice, {
      en: ['It is close', en.figure(advice.interval![0]), en.figure(advice.interval![1]), en.percent(advice.probabilityAbove!)],
      es: ['Está cerca', es.figure(advice.interval![0]), es.figure(advice.interval![1]), es.percent(advice.probabilityAbove!)],
    });
  });

  it('a full sample at the figure says that the truth may lie on its other side', () => {
    const advice = adviceOn('2025-07-08', { ...silk, checks: [checkOf('2025-07-08', 0)], samples: [sampleOf(100, 6)] });
    expect(advice).toMatchObject({ verb: 'decide', confidence: 'low' });
    firstLine(advice, { en: ['It is close', '5 %'], es: ['Está cerca', '5 %'] });
  });

  it('leaves the time that eggs leave: masses in potato, three days from the sample', () => {
    const potato = {
      ...borer,
      fields: [fieldOf({ crop: 'potato' })],
      stages: [stageAt('flowering')],
      checks: [checkOf('2025-07-08', 3)],
      samples: [sampleOf(75, 15, { insect: 'ostrinia-nubilalis', kind: 'egg-masses', totalCount: 15 })],
    };
    const advice = adviceOn('2025-07-08', potato, 'ostrinia-nubilalis');
    expect(advice).toMatchObject({ verb: 'decide', by: '2025-07-11' });
    expect(all(advice, en)).toContain('75 egg masses looked at, 15 egg masses');
    firstLine(advice, { en: ['by Fri 11 July'], es: ['a más tardar el vie 11 de julio'] });
  });
});

describe('Scout says why to go', () => {
  it('because the catch is above a rule that sends people to look, and the plants decide', () => {
    const advice = adviceOn('2025-07-08', { ...borer, checks: [checkOf('2025-07-08', 40)] }, 'ostrinia-nubilalis');
    firstLine(advice, {
      en: ['look for European corn borer', 'by Thu 10 July', 'leaves the decision to what they find'],
      es: ['buscar el barrenador europeo', 'a más tardar el jue 10 de julio', 'deja la decisión a lo que se encuentre'],
    });
  });

  it('because the catch is close to a rule made for another stage', () => {
    const parts = { ...borer, stages: [stageAt('whorl')], checks: [checkOf('2025-07-08', 31)] };
    const advice = adviceOn('2025-07-08', parts, 'ostrinia-nubilalis');
    firstLine(advice, {
      en: ['close to its rule', 'for silk', 'the plants decide'],
      es: ['cerca de su regla', 'para jilote', 'deciden las plantas'],
    });
  });

  it('because a sample found some and is too small: how many more', () => {
    const advice = adviceOn('2025-07-08', { ...silk, checks: [checkOf('2025-07-08', 0)], samples: [sampleOf(10, 1)] });
    const more = evidenceOf(advice, 'sample')[0]!.more!;
    firstLine(advice, { en: ['too small'], es: ['demasiado pequeña'] });
    expect(all(advice, en)).toContain(`Look at ${more} more`);
    expect(all(advice, es)).toContain(`Revise ${more} más`);
  });

  it('and a sample says when only the likeness of neighbours keeps it from speaking', () => {
    const advice = adviceOn('2025-07-08', { ...silk, checks: [checkOf('2025-07-08', 0)], samples: [sampleOf(27, 0)] });
    expect(all(advice, en)).toContain('(likeness 0.15, assumed): standing anywhere, this sample would have been read otherwise');
    expect(all(advice, es)).toContain('(parecido 0.15, supuesto): repartidas al azar, esta muestra se habría leído de otro modo');
    const byPlace = Array.from({ length: 27 }, () => '0/1');
    const scattered = { ...silk, checks: [checkOf('2025-07-08', 0)], samples: [sampleOf(27, 0, { byPlace })] };
    expect(all(adviceOn('2025-07-08', scattered), en)).not.toContain('likeness');
  });

  it('because a high catch and a clean sample ask for a better look', () => {
    const samples = [sampleOf(100, 0, { insect: 'ostrinia-nubilalis', kind: 'plants' })];
    const parts = { ...borer, stages: [stageAt('tassel')], checks: [checkOf('2025-07-08', 40)], samples };
    firstLine(adviceOn('2025-07-08', parts, 'ostrinia-nubilalis'), {
      en: ['found nothing', 'better look'],
      es: ['no halló nada', 'revisar mejor'],
    });
  });
});

describe('Watch, Covered, Blind and the dash', () => {
  it('Watch names the next check', () => {
    const advice = adviceOn('2025-07-08', { ...silk, checks: [checkOf('2025-07-08', 0)] });
    firstLine(advice, { en: ['Nothing is due', 'Tue 15 July'], es: ['Nada pendiente', 'el mar 15 de julio'] });
  });

  it('Covered names the day on which it ends', () => {
    const advice = adviceOn('2025-07-09', {
      ...silk,
      checks: [checkOf('2025-07-08', 9)],
      treatments: [treatmentOf('2025-07-09')],
    });
    expect(advice.verb).toBe('covered');
    firstLine(advice, { en: ['covers the field until'], es: ['cubre la parcela hasta el'] });
  });

  it('an insect on a crop that it feeds on without a rule is never called no host', () => {
    const pepper = { fields: [fieldOf({ crop: 'pepper' })], lures: silk.lures };
    const watched = { ...pepper, traps: [trapOf({ insect: 'spodoptera-frugiperda' })], checks: [checkOf('2025-07-08', 3)] };
    const blind = adviceOn('2025-07-08', watched, 'spodoptera-frugiperda');
    expect(blind.verb).toBe('blind');
    firstLine(blind, { en: ['No rule for this crop (pepper)'], es: ['No hay regla para este cultivo'] });

    const alone = adviceOn('2025-07-08', { ...pepper, traps: [] }, 'spodoptera-frugiperda');
    expect(alone).toMatchObject({ verb: 'none', because: [{ kind: 'out-of-season', why: 'no-rule' }] });
    firstLine(alone, { en: ['No rule for this crop'], es: ['No hay regla para este cultivo'] });
  });

  it('codling moth in apple follows the dates of its hatch', () => {
    const apple = {
      fields: [fieldOf({ crop: 'apple' })],
      traps: [trapOf({ insect: 'cydia-pomonella', design: 'delta', hungOn: '2025-05-01' })],
      lures: [lureAt('2025-05-01', 60)],
      // No moth at first, then a catch that the next visit confirms.
      checks: [checkOf('2025-05-08', 0), checkOf('2025-05-12', 4), checkOf('2025-05-16', 5), checkOf('2025-05-20', 6)],
    };
    const on = (date: string, last: number, checks = apple.checks) =>
      adviceOn(date, { ...apple, checks, weather: steadyWeather('2025-01-01', date, 50, last) }, 'cydia-pomonella');
    const early = on('2025-05-20', 66);
    expect(early.verb).toBe('watch');
    expect(evidenceOf(early, 'event')[0]).toMatchObject({ event: 'egg-hatch', status: 'ahead' });
    const hatching = on('2025-05-20', 98);
    expect(hatching.verb).toBe('scout');
    firstLine(hatching, { en: ['look for codling moth', 'egg hatch'], es: ['buscar la polilla de la manzana', 'eclosión'] });
  });
});

describe('sentences read aloud', () => {
  it('an interval changes by a day, in both languages', () => {
    const advice = adviceOn('2025-07-11', {
      ...silk,
      checks: [checkOf('2025-07-11', 20)],
      weather: steadyWeather('2025-07-01', '2025-07-10', 55, 75),
    });
    expect(all(advice, en)).toContain('the interval is a day longer');
    expect(all(advice, es)).toContain('el intervalo es un día más largo');
    const unknown = adviceOn('2025-07-11', { ...silk, checks: [checkOf('2025-07-11', 20)] });
    expect(all(unknown, en)).toContain('would make the interval a day longer');
    expect(all(unknown, en)).not.toMatch(/\b1 day longer|a 1 day/);
  });

  it('rival rules are named with what each would say', () => {
    const armyworm = {
      ...silk,
      traps: [trapOf({ insect: 'spodoptera-frugiperda', design: 'bucket' })],
      checks: [checkOf('2025-07-08', 10)],
    };
    const advice = adviceOn('2025-07-08', armyworm, 'spodoptera-frugiperda');
    expect(all(advice, en)).toContain('Another rule (Northeastern United States): 50 per week at silk. By it: Watch.');
    expect(all(advice, es)).toContain(
      'Otra regla (noreste de los Estados Unidos): 50 por semana en jilote. Según ella: Vigilar.',
    );
    expect(all(advice, en)).toContain('Choose the region under Settings');
    expect(all(advice, es)).toContain('Elija la región en Ajustes');
  });
});
