import { describe, expect, it } from 'vitest';
import { TRAP_DESIGNS } from '../records/schema.ts';
import { ASSUMPTIONS, catalogue, citation, cropById, insectById, modelById, practicesFor } from './index.ts';
import type { Standing } from './types.ts';

const { insects, crops, models, rules, designs, practices } = catalogue;

describe('the catalogue holds together', () => {
  it('no id is used twice', () => {
    for (const entries of [insects, crops, models, rules, practices]) {
      const ids = entries.map((entry) => entry.id);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  it('a rule names insects, crops and stages that exist, on a crop that hosts the insect', () => {
    for (const entry of rules) {
      const insect = insectById(entry.insect);
      expect(entry.crops.length, entry.id).toBeGreaterThan(0);
      for (const crop of entry.crops) {
        expect(insect?.hosts, entry.id).toContain(crop);
        const known = cropById(crop)?.stages.map((stage) => stage.id);
        for (const stage of entry.stages ?? []) expect(known, entry.id).toContain(stage);
      }
    }
    for (const insect of insects) for (const host of insect.hosts) expect(cropById(host), insect.id).not.toBeNull();
  });

  it('a rule that looks at the neighbours or at another insect names ones that exist', () => {
    for (const entry of rules) {
      if (entry.kind === 'catch-threshold' && entry.unless) {
        const known = cropById(entry.unless.nearbyCrop)?.stages.map((stage) => stage.id);
        for (const stage of entry.unless.stages) expect(known, entry.id).toContain(stage);
        expect(entry.unless.threshold).toBeGreaterThan(entry.threshold);
      }
      if (entry.kind === 'infestation' && entry.combinedWith) expect(insectById(entry.combinedWith.insect)).not.toBeNull();
    }
  });

  it('says for every rule on a catch where it is from that the catch decides or sends people to look', () => {
    for (const rule of rules) {
      if (rule.kind !== 'catch-threshold' && rule.kind !== 'catch-table') continue;
      expect(rule.maySource, rule.id).toBeDefined();
      // New York State IPM speaks of the moths of sweet corn; elsewhere it is common practice, and says why.
      const isSweetCorn = rule.crops.every((crop) => crop === 'sweet-corn');
      expect([rule.id, rule.maySource!.standing]).toEqual([rule.id, isSweetCorn ? 'published' : 'practice']);
      if (!isSweetCorn) expect(rule.maySource!.note?.es, rule.id).toBeTruthy();
    }
  });

  it('what is recalled drives nothing by itself but a walk to the field', () => {
    const recalled = (standing: Standing) => standing === 'memory';
    const acting = rules.flatMap((rule) => {
      const model = rule.kind === 'heat-scout' ? modelById(rule.modelId) : null;
      const rests = [rule.standing, ...(model ? [model.standing] : [])];
      // A rule by heat sends people to look; a sample of the plants is what they saw there themselves.
      return rests.some(recalled) && rule.may !== 'send-scouting' ? [rule.id] : [];
    });
    expect(acting).toEqual([]);
    expect(rules.filter(({ standing, kind }) => recalled(standing) && kind === 'infestation')).toEqual([]);
  });

  it('a heat rule has a model of its insect that starts on a day the program can know, and a window with an event in it', () => {
    for (const entry of rules) {
      if (entry.kind !== 'heat-scout') continue;
      const model = modelById(entry.modelId);
      expect(model?.insect, entry.id).toBe(entry.insect);
      expect(['calendar', 'biofix']).toContain(model?.start.kind);
      expect(entry.to).toBeGreaterThan(entry.from);
      const sought = model?.events.filter(
        (event) => event.event === entry.lookFor && event.from >= entry.from && event.from <= entry.to,
      );
      expect(sought?.length, entry.id).toBe(1);
    }
  });

  it('a model that starts at the biofix has an insect with a biofix rule', () => {
    for (const model of models) {
      expect(insectById(model.insect), model.id).not.toBeNull();
      if (model.start.kind === 'biofix') expect(insectById(model.insect)?.biofix, model.id).not.toBeNull();
    }
  });

  it('a model has events or stages, its events ascend, and its thresholds suit its cutoff', () => {
    for (const model of models) {
      expect(model.events.length + model.stages.length, model.id).toBeGreaterThan(0);
      const starts = model.events.map((event) => event.from);
      expect(starts, model.id).toEqual([...starts].sort((a, b) => a - b));
      for (const event of model.events) if (event.to !== null) expect(event.to).toBeGreaterThan(event.from);
      expect(model.heat.upper === null, model.id).toBe(model.heat.cutoff === 'none');
      if (model.heat.upper !== null) expect(model.heat.upper).toBeGreaterThan(model.heat.lower);
    }
  });

  it('every trap design has a name and facts', () => {
    expect(designs.map((facts) => facts.design).sort()).toEqual([...TRAP_DESIGNS].sort());
  });

  it('a crop’s stages cover every two-digit BBCH code once, in order', () => {
    for (const crop of crops) {
      let next = 0;
      for (const { bbch } of crop.stages) {
        expect(bbch[0], crop.id).toBe(next);
        expect(bbch[1]).toBeGreaterThanOrEqual(bbch[0]);
        next = bbch[1] + 1;
      }
      expect(next, crop.id).toBe(100);
    }
  });
});

describe('practices', () => {
  it('what can hurt comes first where moths are killed', () => {
    expect(practicesFor('handling-moths').map((entry) => entry.weight)).toEqual(['caution', 'fact']);
  });

  it('are published only where somebody published them', () => {
    const published = practices.filter((entry) => entry.standing === 'published').map((entry) => entry.id);
    expect(published.sort()).toEqual([
      'brassicas-tolerance',
      'catch-and-plants',
      'in-crop-or-upwind',
      'low-growth-under-trap',
      'pepper-light-trap',
      'small-wire-cones-vine-borer',
      'threshold-is-estimate',
    ]);
  });
});

describe('assumptions', () => {
  it('carry their own id, a unit, a reason and no claim to be published', () => {
    for (const [key, assumption] of Object.entries(ASSUMPTIONS)) {
      expect(assumption.id).toBe(key);
      expect(['practice', 'chosen']).toContain(assumption.standing);
      expect(assumption.unit.es).not.toBe('');
      expect(assumption.why.es).not.toBe(assumption.why.en);
      expect(assumption.why.en.length).toBeGreaterThan(20);
      expect(citation(assumption.source)).toBeNull();
    }
  });

  it('call the published week of 9, 7, 5, 9, 6, 7, 7 against 10 accumulating (Purdue Vegetable Crops Hotline)', () => {
    const nights = [9, 7, 5, 9, 6, 7, 7];
    const share = nights.reduce((sum, catches) => sum + catches) / nights.length / 10;
    expect(nights.length).toBe(ASSUMPTIONS.accumulationNights.value);
    expect(share).toBeCloseTo(0.714, 3);
    expect(share).toBeGreaterThan(ASSUMPTIONS.accumulationShare.value);
  });
});
