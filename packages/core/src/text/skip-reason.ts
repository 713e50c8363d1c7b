/** Why a trap was passed by, in words; apart from other sentences, so that a phone loads no more than these. */
import type { Language } from '../people/person.ts';
import type { SkipReason } from '../records/schema.ts';

export const skipReasonWords: Readonly<Record<Language, Readonly<Record<SkipReason, string>>>> = {
  en: {
    'keep-out': 'keep-out time',
    water: 'under water',
    locked: 'gate locked',
    'no-time': 'no time',
    'not-found': 'trap not found',
    unsafe: 'not safe',
    other: 'other reason',
  },
  es: {
    'keep-out': 'tiempo de reentrada',
    water: 'bajo el agua',
    locked: 'cerrado con llave',
    'no-time': 'sin tiempo',
    'not-found': 'no se encontró la trampa',
    unsafe: 'no es seguro',
    other: 'otro motivo',
  },
};
