import type { Language } from '@duskwatch/core';

export interface LabelWords {
  readonly title: string;
  readonly opening: (height: string) => string;
  /** A line to write on follows. */
  readonly openingUnknown: string;
  readonly station: (station: string) => string;
  readonly contact: (contact: string) => string;
  readonly noCode: string;
  readonly invented: string;
}

export const labelWords: Readonly<Record<Language, LabelWords>> = {
  en: {
    title: 'Trap labels',
    opening: (height) => `keep opening at ${height}`,
    openingUnknown: 'keep opening at ______',
    station: (station) => `station ${station}`,
    contact: (contact) => `Questions: ${contact}`,
    noCode: 'Name too long for a code on this label',
    invented: 'invented',
  },
  es: {
    title: 'Etiquetas de trampas',
    opening: (height) => `mantener la abertura a ${height}`,
    openingUnknown: 'mantener la abertura a ______',
    station: (station) => `estación ${station}`,
    contact: (contact) => `Preguntas: ${contact}`,
    noCode: 'Nombre demasiado largo para un código en esta etiqueta',
    invented: 'inventado',
  },
};
