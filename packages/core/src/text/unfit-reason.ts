/** Why a trap was unfit, in words; apart from other sentences, so that a phone loads no more than these. */
import type { Language } from '../people/person.ts';
import type { UnfitReason } from '../records/schema.ts';

export const unfitReasonWords: Readonly<Record<Language, Readonly<Record<UnfitReason, string>>>> = {
  en: {
    down: 'down',
    full: 'full',
    'lure-missing': 'lure missing',
    stolen: 'stolen',
    flooded: 'flooded',
    other: 'other',
  },
  es: {
    down: 'caída',
    full: 'llena',
    'lure-missing': 'sin atrayente',
    stolen: 'robada',
    flooded: 'inundada',
    other: 'otra cosa',
  },
};
