import { describe, expect, it } from 'vitest';
import { catalogue, designFacts } from '../index.ts';

describe('trap designs', () => {
  it.each([
    ['bucket', null, [25, 30]],
    ['mesh-cone', 0.6, [120, 120]],
    ['wire-cone', 1.2, [250, 275]],
    ['delta', null, null],
  ] as const)('%s hangs at %s m and costs %s USD', (design, heightM, costUsd) => {
    expect(designFacts(design)).toMatchObject({ heightM, costUsd });
  });

  it('a mesh cone catches a third to a half of what a wire cone does: read, but no source that can be named', () => {
    expect(catalogue.designRatios).toMatchObject([
      { of: 'mesh-cone', against: 'wire-cone', low: 1 / 3, high: 1 / 2, standing: 'practice' },
    ]);
  });
});
