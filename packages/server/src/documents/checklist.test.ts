import { TRAP_DESIGNS } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { type ChecklistRequest, checklistsPdf } from './checklist.ts';
import { rendered } from './rendered.testing.ts';

const request = (change: Partial<ChecklistRequest> = {}): ChecklistRequest => ({
  design: 'mesh-cone',
  insects: ['helicoverpa-zea', 'ostrinia-nubilalis'],
  language: 'en',
  length: 'm',
  paper: 'A4',
  programName: 'Vale',
  invented: true,
  ...change,
});
const said = async (change: Partial<ChecklistRequest>) => {
  const pages = await rendered(await checklistsPdf([request(change)]));
  return {
    pages,
    text: pages
      .map(({ text }) => text)
      .join(' ')
      .replace(/\s+/g, ' '),
  };
};

describe('a checklist for hanging', () => {
  it('names materials, place, height, gloves for each species, and the cautions of driving a post, with their standing', async () => {
    const { text } = await said({});
    for (const part of [
      'nylon mesh cone trap',
      'Have buried lines located',
      'eye protection',
      'Mind heat and traffic',
      'Keep the opening at 0.6 m above ground',
      'corn earworm / tomato fruitworm: fresh gloves on',
      'European corn borer: fresh gloves on',
      'flagging tape',
      'common practice, no source',
    ])
      expect(text).toContain(part);
    expect(text).toMatch(/\[\d\] UNH Extension/);
  });

  it('in Spanish, in feet, on US paper, and where the catalogue knows no height', async () => {
    const { text, pages } = await said({ language: 'es', length: 'ft', paper: 'Letter' });
    expect(text).toContain('Mantenga la abertura a 2 pies del suelo');
    expect(pages[0]!.widthMm).toBeCloseTo(215.9, 1);
    expect((await said({ language: 'es', design: 'delta' })).text).toContain('Altura de la abertura: ______');
  });

  it('keeps to its margins, whatever the design, with room for a long name and many species', async () => {
    const insects = Array.from({ length: 25 }, (_, n) => `an-insect-with-a-long-name-number-${n}`);
    for (const design of TRAP_DESIGNS) {
      for (const page of (await said({ design, insects, programName: 'W'.repeat(120) })).pages) {
        expect(page.ink({ x: 0, y: 0, width: 12, height: page.heightMm })).toBe(0);
        expect(page.ink({ x: page.widthMm - 17.5, y: 0, width: 17.5, height: page.heightMm })).toBe(0);
        expect(page.ink({ x: 0, y: page.heightMm - 16, width: page.widthMm, height: 16 })).toBe(0);
      }
    }
  }, 60_000);
});
