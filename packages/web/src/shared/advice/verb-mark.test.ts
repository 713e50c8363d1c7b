import { english, spanish } from '@duskwatch/core';
import { expect, test } from 'vitest';
import { VERBS } from './verbs.ts';

test.each([english({ temperature: 'F' }), spanish({ temperature: 'C' })])(
  'no two marks share a letter in $language',
  ({ verb }) => {
    const letters = VERBS.filter((each) => each !== 'none').map((each) => verb[each][0]);
    expect(new Set(letters).size).toBe(letters.length);
  },
);
