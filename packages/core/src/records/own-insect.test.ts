import { describe, expect, it } from 'vitest';
import { isOwnInsect, ownInsectIn, scientificNameOf, slugOfName } from './own-insect.ts';

const KNOWN = ['helicoverpa-zea', 'cydia-nigricana'];

describe('an insect that the catalogue does not hold', () => {
  it.each(['acleris-minuta', 'cydia-splendana', 'helicoverpa-punctigera', 'delia-radicum-brassicae'])(
    '%s goes by its own name',
    (slug) => {
      expect(isOwnInsect(slug, KNOWN)).toBe(true);
    },
  );

  it.each([
    ['helicoverpa-zae', 'two letters changed about'],
    ['helicoverpa-zeaa', 'a letter too many'],
    ['Acleris-minuta', 'a capital'],
    ['acleris minuta', 'a space'],
    ['luna', 'no species'],
    ['moth-1', 'a figure'],
    ['🦋-moth', 'a picture'],
    ['', 'nothing'],
  ])('%s is none: %s', (slug) => expect(isOwnInsect(slug, KNOWN)).toBe(false));

  it.each([
    ['Acleris minuta', 'acleris-minuta'],
    ['Acleris minuta (Robinson, 1869)', 'acleris-minuta'],
    ['acleris-minuta', 'acleris-minuta'],
    ['yellow moth', null],
    ['Other moths', null],
    ['Helicoverpa zae', null],
    ['total', null],
  ])('%s is read as %s', (text, slug) => expect(ownInsectIn(text, [...KNOWN])).toBe(slug));

  it('is written as people write it and kept as a slug', () => {
    expect(scientificNameOf('acleris-minuta')).toBe('Acleris minuta');
    expect(slugOfName(' Acleris  minuta ')).toBe('acleris-minuta');
    expect(slugOfName('Acleris minuta (Robinson, 1869)')).toBe('acleris-minuta');
    expect(slugOfName('Délia radicum brassicae')).toBe('delia-radicum-brassicae');
    expect(scientificNameOf(slugOfName('Acleris minuta'))).toBe('Acleris minuta');
  });
});
