import { describe, expect, it } from 'vitest';
import { canonicalCrop, cropById } from '../index.ts';

describe('a crop as people write it', () => {
  it.each([
    ['sweet-corn', 'sweet-corn'],
    ['Sweet corn', 'sweet-corn'],
    ['sweet_corn ', 'sweet-corn'],
    ['Tomatoes', 'tomato'],
    ['maíz dulce', 'sweet-corn'],
    ['Summer squash', 'squash'],
  ])('%s is %s', (written, crop) => {
    expect(canonicalCrop(written)).toBe(crop);
    expect(cropById(canonicalCrop(written))).not.toBeNull();
  });

  it('that the catalogue does not know keeps its own name', () => expect(canonicalCrop('Okra ')).toBe('okra'));
  it('plain "corn" is not guessed to be either corn', () => expect(cropById(canonicalCrop('corn'))).toBeNull());
});
