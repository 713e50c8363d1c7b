import { describe, expect, it } from 'vitest';
import { ASSUMPTIONS, catalogue, citation } from '../catalogue/index.ts';
import { SEASON_ASSUMPTIONS } from '../planning/assumptions.ts';
import { PLAN_ASSUMPTIONS } from '../scouting/assumptions.ts';
import { describeSources } from './sources.ts';

const { insects, models, rules } = catalogue;

describe('every fact says where it comes from', () => {
  const lines = describeSources();

  it('with a source and a standing on each line', () => {
    for (const line of lines) {
      expect(line.source.trim(), line.id).not.toBe('');
      expect(['published', 'practice', 'memory', 'chosen'], line.id).toContain(line.standing);
    }
  });

  it('and published is never claimed for common practice or for memory', () => {
    for (const line of lines) {
      expect(citation(line.source) === null || line.source.includes('from memory'), `${line.kind} ${line.id}`).toBe(
        line.standing !== 'published',
      );
    }
  });

  it('and what is published says who, what and where one can read it', () => {
    for (const line of lines) {
      expect(line.works.length > 0, `${line.kind} ${line.id}`).toBe(line.standing === 'published');
      for (const { author, where } of line.works) expect([author, where].every((text) => text.trim() !== '')).toBe(true);
      for (const { year, title } of line.works) {
        if (year !== null) expect(year, line.id).toBeGreaterThan(1900);
        if (title !== null) expect(title.trim(), line.id).not.toBe('');
      }
    }
  });

  it('and the works of which neither year nor title is at hand are these, to be completed', () => {
    const bare = lines.flatMap(({ works }) => works.filter(({ year, title }) => year === null && title === null));
    expect([...new Set(bare.map(({ where }) => where))].sort()).toEqual([
      'Iowa State Univ. Extension, peppers',
      'UC ANR Statewide IPM Program, cole crops',
      'UC ANR Statewide IPM Program, phenology models',
      'UNH Extension, fact sheet on pheromone traps in sweet corn',
      'UNH Extension, squash vine borer',
      'UW AgWeather, European corn borer degree-days',
      'Univ. Maine Cooperative Extension, potato pest management',
      'Univ. Minnesota Extension, western bean cutworm',
    ]);
  });

  it('with notes in each language’s own words', () => {
    for (const { note, id } of lines) if (note) expect(note.es, id).not.toBe(note.en);
  });

  it('with one line for every entry', () => {
    const of = (kind: string) => lines.filter((line) => line.kind === kind).map((line) => line.id);
    expect(of('model')).toEqual(models.map((model) => model.id));
    expect(of('rule')).toEqual(rules.map((entry) => entry.id));
    expect(of('hosts')).toEqual(insects.map((insect) => insect.id));
    expect(of('assumption')).toEqual([
      ...Object.keys(ASSUMPTIONS),
      ...Object.keys(PLAN_ASSUMPTIONS),
      ...Object.keys(SEASON_ASSUMPTIONS),
    ]);
    expect(new Set(lines.map((line) => `${line.kind} ${line.id}`)).size).toBe(lines.length);
  });
});
