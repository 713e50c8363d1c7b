import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalStage, catalogue, stageOrder } from '../index.ts';

describe('a stage as people write it', () => {
  it.each([
    ['sweet-corn', 'silk', 'silk'],
    ['sweet-corn', 'Silking', 'silk'],
    ['sweet-corn', ' FRESH  silk ', 'silk'],
    ['sweet-corn', 'R1', 'silk'],
    ['sweet-corn', 'bloom', 'silk'],
    ['sweet-corn', '63', 'silk'],
    ['sweet-corn', 'BBCH 63', 'silk'],
    ['sweet-corn', 'bbch65', 'silk'],
    ['sweet-corn', 'BBCH-55', 'tassel'],
    ['sweet-corn', 'dry_silk', 'dry-silk'],
    ['sweet-corn', 'silk-dry', 'dry-silk'],
    ['sweet-corn', 'Barbas secas', 'dry-silk'],
    ['sweet-corn', '67', 'dry-silk'],
    ['sweet-corn', 'V6', 'whorl'],
    ['sweet-corn', 'cogollo', 'whorl'],
    ['sweet-corn', '09', 'emergence'],
    ['sweet-corn', '75', 'harvest'],
    ['field-corn', '75', 'dry-silk'],
    ['field-corn', 'dent', 'dry-silk'],
    ['field-corn', '89', 'harvest'],
    ['tomato', 'Floración', 'flowering'],
    ['tomato', 'floracion', 'flowering'],
    ['tomato', 'green fruit', 'fruiting'],
    ['tomato', 'BBCH 71', 'fruiting'],
    ['squash', 'in bloom', 'flowering'],
    ['potato', 'tuber_bulking', 'tuber-bulking'],
    ['brassicas', 'head formation', 'heading'],
    ['apple', 'pink', 'pre-bloom'],
  ])('on %s, "%s" is %s', (crop, written, stage) => {
    expect(canonicalStage(crop, written)).toBe(stage);
  });

  it.each([
    ['sweet-corn', 'ok'],
    ['sweet-corn', ''],
    ['sweet-corn', '6'],
    ['sweet-corn', '163'],
    ['sweet-corn', 'heading'],
    ['tomato', 'silk'],
    ['okra', 'flowering'],
    ['okra', '63'],
  ])('on %s, "%s" is not understood', (crop, written) => {
    expect(canonicalStage(crop, written)).toBeNull();
    expect(stageOrder(crop, written)).toBeNull();
  });

  it('every stage is found by its id and by its English and Spanish names', () => {
    for (const crop of catalogue.crops)
      crop.stages.forEach((stage, order) => {
        for (const written of [stage.id, stage.name.en, stage.name.es]) {
          expect(canonicalStage(crop.id, written.toUpperCase()), `${crop.id} ${written}`).toBe(stage.id);
        }
        expect(stageOrder(crop.id, stage.id)).toBe(order);
      });
  });

  it('a later BBCH code is never an earlier stage', () => {
    const crop = fc.constantFrom(...catalogue.crops.map(({ id }) => id));
    const code = fc.integer({ min: 0, max: 99 });
    const written = (value: number) => String(value).padStart(2, '0');
    fc.assert(
      fc.property(crop, code, code, (id, a, b) => {
        const [early, late] = [Math.min(a, b), Math.max(a, b)];
        expect(stageOrder(id, written(early))!).toBeLessThanOrEqual(stageOrder(id, written(late))!);
      }),
    );
  });
});
