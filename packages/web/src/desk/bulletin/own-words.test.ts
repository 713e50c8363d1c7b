import type { BulletinBlock } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { isStale, sent, type Worded, worded } from './own-words.ts';

const block = (over: Partial<BulletinBlock> = {}): BulletinBlock => ({
  id: 'summary',
  title: 'In short',
  lines: ['One.', 'Two.'],
  fixed: false,
  ...over,
});
const caution = block({ id: 'cautions', title: 'Cautions', lines: ['Read the label.'], fixed: true });
const none: Worded = { en: {}, es: {} };

describe('words of one’s own in a bulletin', () => {
  it('stand in one language, and are gone once they are the draft again', () => {
    const own = worded(none, 'en', block(), 'Mine.');
    expect(sent(own.en, [block()])).toEqual({ summary: 'Mine.' });
    expect(own.es).toEqual({});
    expect(worded(own, 'en', block(), 'One.\nTwo.')).toEqual(none);
  });

  it('are said to be stale when the draft says something else by now', () => {
    const { en } = worded(none, 'en', block(), 'Mine.');
    expect(isStale(en.summary, block())).toBe(false);
    expect(isStale(en.summary, block({ lines: ['One.', 'Three.'] }))).toBe(true);
    expect(isStale(undefined, block())).toBe(false);
  });

  it('are added to what is always sent, and cannot take it out', () => {
    const { en } = worded(none, 'en', caution, 'Ask Ida.');
    expect(sent(en, [caution])).toEqual({ cautions: 'Read the label.\nAsk Ida.' });
    expect(worded({ ...none, en }, 'en', caution, '')).toEqual(none);
  });
});
