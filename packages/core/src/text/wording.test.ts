import { describe, expect, it } from 'vitest';
import { adviseAll, prepare } from '../advice/index.ts';
import {
  adviceOn,
  checkOf,
  fieldOf,
  lureAt,
  nightly,
  programOf,
  ruleOf,
  stageAt,
  steadyWeather,
  trapOf,
  treatmentOf,
} from '../advice/test-program.ts';
import type { Advice, Evidence } from '../advice/types.ts';
import { day } from '../base/day.ts';
import { english, figure, fine, percent, spanish, type Wording } from './index.ts';

const en = english({ temperature: 'F' });
const silk = { stages: [stageAt('silk', '2025-07-05')], lures: [lureAt('2025-07-01')] };

describe('English', () => {
  it('says what is due, by when and with whom, and never tells anybody to spray', () => {
    const advice = adviceOn('2025-07-11', {
      ...silk,
      checks: [checkOf('2025-07-11', 31)],
      weather: steadyWeather('2025-07-01', '2025-07-10', 60, 82),
    });
    expect(en.headline(advice)).toBe(
      'A decision on corn earworm / tomato fruitworm is due by Sat 12 July, with a licensed adviser. While the catch holds, the rule asks for a decision every 4 days.',
    );
    expect(en.when(advice)).toBe('by Sat 12 July');
    expect(en.rate(advice)).toMatch(/^3\.1 a night \(\d[\d.]*–\d[\d.]*\)$/);
    const said = [en.headline(advice), ...advice.because.map(en.evidence), ...advice.cautions.map(en.caution)].join(' ');
    expect(said).not.toMatch(/spray/i);
    expect(said).toContain('31 moths in 10 trap-nights (mesh cone): 3.1 per trap per night, 80 % interval');
    expect(said).toContain('3.1 per trap per night lies in the rule’s step 1–13: 4 days between protective decisions.');
    expect(said).toContain('Daily maxima were not below 80 °F on each of the last 2 days: the interval stays as it is.');
    expect(said).toContain('The product label is the law');
  });

  it('shows temperatures in the unit the reader chose', () => {
    const advice = adviceOn('2025-07-11', { ...silk, checks: [checkOf('2025-07-11', 31)] });
    const inCelsius = advice.because.map(english({ temperature: 'C' }).evidence).join(' ');
    expect(inCelsius).toContain('27 °C');
    expect(inCelsius).not.toContain('°F');
  });
});

describe('Spanish', () => {
  it('says the same with the same numbers, a comma for the decimal point', () => {
    const es = spanish({ temperature: 'C' });
    const advice = adviceOn('2025-07-11', { ...silk, checks: [checkOf('2025-07-11', 31)] });
    expect(es.headline(advice)).toBe(
      'Toca decidir sobre el gusano elotero / gusano del fruto del tomate a más tardar el sáb 12 de julio, con un asesor autorizado. Mientras se mantenga la captura, la regla pide una decisión cada 4 días.',
    );
    expect(es.rate(advice)).toMatch(/^3\.1 por noche/);
    expect(advice.because.map(es.evidence).join(' ')).toContain(
      '31 polillas en 10 noches-trampa (cono de malla): 3.1 por trampa y noche',
    );
  });
});

describe('the end of a treatment’s cover', () => {
  const heavy = { ...silk, checks: [checkOf('2025-07-08', 140)] };
  const said = (protectsDays: number | null) => {
    const advice = adviceOn('2025-07-10', { ...heavy, treatments: [treatmentOf('2025-07-09', { protectsDays })] });
    return [en, spanish({ temperature: 'F' })].map((language) => advice.because.map(language.evidence).join(' '));
  };

  it('says whether the label or the rule sets it, and asks for a figure that nobody typed', () => {
    const [shorter, corto] = said(7);
    expect(shorter).toContain('by the rule: at this catch it asks for a decision every 3 days, sooner than the protection typed');
    expect(corto).toContain('por la regla: con esta captura pide una decisión cada 3 días');
    expect(said(2)[0]).toContain('the end of the protection typed from its label');
    const [untyped, sinAnotar] = said(null);
    expect(untyped).toContain('Type them from its label.');
    expect(sinAnotar).toContain('No están anotados los días de protección');
  });
});

describe('every language', () => {
  const parts = [
    { ...silk, checks: nightly('2025-07-01', [9, 7, 5, 9, 6, 7, 7]), rules: [ruleOf()] },
    { ...silk, checks: [checkOf('2025-07-08', 9)], treatments: [treatmentOf('2025-07-08')] },
    { checks: [checkOf('2025-07-08', 9, { otherCount: 30 })] },
    { ...silk, checks: [checkOf('2025-07-05', 9, { emptied: false }), checkOf('2025-07-08', 4)] },
    { ...silk, fields: [fieldOf({ harvestOn: '2025-07-09' })], checks: [checkOf('2025-07-08', 9)] },
    { ...silk, traps: [trapOf({ insect: 'ostrinia-nubilalis', informs: [] })] },
    {
      traps: [trapOf(), trapOf({ trapId: 'T2', design: 'wire-cone' as const })],
      checks: [checkOf('2025-07-08', 9), checkOf('2025-07-08', 1, { trapId: 'T2' })],
    },
    {
      ...silk,
      traps: [trapOf({ insect: 'ostrinia-nubilalis' })],
      stages: [stageAt('whorl')],
      weather: steadyWeather('2025-01-01', '2025-07-07', 50, 75),
    },
  ];
  const insects = ['helicoverpa-zea', 'ostrinia-nubilalis'];
  const all: Advice[] = parts.flatMap((part) => adviseAll(prepare(programOf(part), { on: day('2025-07-08') })));
  const said = (language: Wording) =>
    all.flatMap((advice) => [
      language.headline(advice),
      ...advice.because.map(language.evidence),
      ...advice.cautions.map(language.caution),
    ]);

  it('has a sentence without holes for everything these programs give rise to', () => {
    for (const text of [...said(en), ...said(spanish({ temperature: 'F' }))]) {
      expect(text).toMatch(/^[A-ZÁÉÍÓÚ0-9].*[.]$/);
      expect(text).not.toMatch(/undefined|null|NaN|Infinity|\[object/);
    }
    expect(new Set(all.flatMap(({ because }) => because.map(({ kind }) => kind))).size).toBeGreaterThan(12);
  });

  it('has its own words: no sentence is left in another language', () => {
    const spanishSaid = said(spanish({ temperature: 'F' }));
    expect(said(en).filter((text, index) => spanishSaid[index] === text)).toEqual([]);
    for (const insect of insects) expect(spanish({ temperature: 'F' }).insect(insect)).not.toBe(en.insect(insect));
  });
});

describe('figures', () => {
  it.each([
    [0, '0'],
    [0.0004, 'under 0.01'],
    [0.314, '0.31'],
    [3.04, '3'],
    [3.14, '3.1'],
    [31.4, '31'],
  ])('%f reads as %s', (value, text) => expect(figure(value)).toBe(text));

  it('never rounds a probability to certainty', () => {
    expect([percent(0.9996), percent(0.0004), percent(0.506)]).toEqual(['over 99 %', 'under 1 %', '51 %']);
  });

  it('keeps a catch of 11.5 apart from a rule’s figure of 12', () => expect(fine(11.5)).toBe('11.5'));
});

it('dates read in the order of the reader, and Spanish keeps its own', () => {
  const said = (wording: Wording) => [
    wording.day('2025-07-13'),
    wording.when({ verb: 'decide', dueSince: null, by: '2025-07-13' }),
  ];
  expect(said(english({ temperature: 'F', dayOrder: 'month-day' }))).toEqual(['Sun July 13', 'by Sun July 13']);
  expect(said(english({ temperature: 'F' }))).toEqual(['Sun 13 July', 'by Sun 13 July']);
  expect(spanish({ temperature: 'F', dayOrder: 'month-day' }).day('2025-07-13')).toBe('dom 13 de julio');
});

it('sums of heat read in the reader’s unit, and as published beside it', () => {
  const event: Evidence = {
    kind: 'event',
    modelId: 'helicoverpa-zea-from-catch',
    event: 'small-larvae',
    generation: 1,
    from: 72.9,
    to: 332.7,
    unit: 'F',
    heatSoFar: 90,
    heatThrough: '2025-07-13',
    bridgedDays: 0,
    filledDays: 0,
    filledFrom: null,
    status: 'now',
    start: null,
    expected: null,
  };
  expect(english({ temperature: 'F' }).evidence(event)).toBe('Small larvae: now (heat to Sun 13 July 90 of 72.9–332.7 °F·d).');
  expect(english({ temperature: 'C' }).evidence(event)).toBe(
    'Small larvae: now (heat to Sun 13 July 50 of 41–185 °C·d, published as 72.9–332.7 °F·d).',
  );
  expect(spanish({ temperature: 'C' }).evidence(event)).toContain('50 de 41–185 °C·d, publicado como 72.9–332.7 °F·d');
});
