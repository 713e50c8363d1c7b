import { catalogue, day, emptyProgram, PAPER_MM, type Program, prepare, scoutingSheets } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';
import { rendered } from './rendered.testing.ts';
import { scoutingPdf } from './scouting-sheets.ts';

/** A field of every crop with a rule, under a long name, each insect watched; one treated a day ago. Invented. */
const everyRule: Program = (() => {
  const crops = [...new Set(catalogue.rules.flatMap((rule) => rule.crops))];
  const small = smallProgram();
  return {
    ...small,
    fields: crops.map((crop) => ({
      ...small.fields[0]!,
      fieldId: crop,
      name: `The long piece behind the mill race, ${crop}`,
      crop,
    })),
    stages: [],
    traps: catalogue.insects.map(({ id }) => ({ ...small.traps[0]!, trapId: id, insect: id, informs: crops })),
    treatments: [
      {
        fieldId: 'sweet-corn',
        insect: 'helicoverpa-zea',
        appliedOn: '2026-07-14',
        product: 'Product A (invented)',
        protectsDays: 3,
        reentryHours: 24,
        preharvestDays: null,
      },
    ],
  };
})();

const wanted = catalogue.rules.flatMap(({ id, kind, crops, insect }) =>
  kind === 'infestation' ? [{ fieldId: crops[0]!, insect, ruleId: id }] : [],
);
const withoutFigure = { fieldId: 'squash', insect: 'melittia-cucurbitae' };

function sheetsOf(program = everyRule, which = [...wanted, withoutFigure]) {
  const sheets = scoutingSheets(prepare(program, { on: day('2026-07-15') }), which);
  if (!sheets.ok) throw new Error(JSON.stringify(sheets.problems));
  return sheets.value;
}

describe('scouting sheets', () => {
  it.each([
    ['A4', 'en'],
    ['Letter', 'es'],
  ] as const)(
    'on %s in %s hold a page or two for each plan, with every stop total on them and nothing over an edge',
    async (paper, language) => {
      const sheets = sheetsOf();
      const pages = await rendered(await scoutingPdf(sheets, { paper, language }));
      const { width, height } = PAPER_MM[paper];
      const enter = language === 'es' ? 'Anótelo en Duskwatch' : 'Enter it in Duskwatch';
      let index = 0;
      for (const sheet of sheets) {
        const first = pages[index]!.text;
        expect(first).toContain(sheet.insect.scientificName);
        const overleaf = first.includes(enter) ? '' : pages[index + 1]!.text;
        const text = first + overleaf;
        index += overleaf === '' ? 1 : 2;
        expect(text).toContain(enter);
        for (const { below, above, samples } of sheet.lines) {
          expect(text).toContain(String(samples));
          if (above !== null) expect(text).toContain(`${above}+`);
          if (below) expect(text).toContain(`0–${below}`);
        }
        expect(text).not.toContain('?');
      }
      expect(pages).toHaveLength(index);
      for (const page of pages) {
        for (const edge of [
          { x: 0, y: 0, width, height: 8 },
          { x: 0, y: height - 8, width, height: 8 },
          { x: 0, y: 0, width: 8, height },
          { x: width - 8, y: 0, width: 8, height },
        ])
          expect(page.ink(edge), JSON.stringify(edge)).toBe(0);
      }
    },
  );

  it('warn of a field that is not to be entered yet, and never ask for a treatment', async () => {
    const [page] = await rendered(await scoutingPdf(sheetsOf(everyRule, [wanted[0]!]), { paper: 'A4', language: 'en' }));
    expect(page!.text.replace(/\s+/g, ' ')).toContain(
      'Keep out until the end of Wed 15 July: Product A (invented), 24 h re-entry',
    );
    expect(page!.text).not.toMatch(/spray/i);
  });

  it('of an empty program say that there is nothing to scout for', async () => {
    const pages = await rendered(await scoutingPdf([], { paper: 'A4', language: 'es' }));
    expect(pages.map(({ text }) => text).join()).toContain('ninguna parcela');
  });
});

describe('GET /api/scouting.pdf', () => {
  const app = (program = smallProgram()) => buildServer({ store: memoryStore(program) });

  it('gives the sheets asked for, on the paper asked for', async () => {
    const answer = await app().inject('/api/scouting.pdf?sheet=north%7Chelicoverpa-zea&paper=letter&language=es&alpha=0.05');
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('application/pdf');
    const pages = await rendered(answer.rawPayload);
    expect(pages).toHaveLength(2);
    expect(pages[0]!.widthMm).toBeCloseTo(PAPER_MM.Letter.width, 1);
    expect(pages[0]!.text).toContain('Hoja de muestreo'.toUpperCase());
    expect(pages[1]!.text).toContain('5 %');
  });

  it('names what it does not know, and limits that make no plan', async () => {
    const unknown = await app().inject('/api/scouting.pdf?sheet=south%7Chelicoverpa-zea');
    expect(unknown.statusCode).toBe(400);
    expect(unknown.json().problems).toMatchObject([{ where: { parameter: 'fieldId' }, got: 'south' }]);
    const turned = await app().inject('/api/scouting.pdf?sheet=north%7Chelicoverpa-zea&m0=0.5&m1=0.1');
    expect(turned.json().problems).toMatchObject([{ where: { parameter: 'm0' } }]);
  });
});

describe('GET /api/scouting', () => {
  it('is as its schema describes, also for a program without fields', async () => {
    const { scoutingSchema } = await import('@duskwatch/core');
    for (const program of [everyRule, emptyProgram()]) {
      const answer = await buildServer({ store: memoryStore(program) }).inject('/api/scouting?on=2026-07-15');
      expect(answer.statusCode).toBe(200);
      expect(scoutingSchema.parse(answer.json())).toEqual(answer.json());
    }
  });
});
