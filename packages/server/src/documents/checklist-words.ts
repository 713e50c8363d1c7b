import type { Language } from '@duskwatch/core';

export interface ChecklistWords {
  readonly title: (design: string) => string;
  readonly blanks: readonly string[];
  readonly sections: Readonly<Record<'before' | 'materials' | 'place' | 'hang' | 'gloves' | 'sources', string>>;
  readonly height: (height: string) => string;
  readonly heightUnknown: string;
  readonly gloves: (insect: string) => string;
  readonly noInsects: string;
  readonly label: string;
  readonly invented: string;
}

export const checklistWords: Readonly<Record<Language, ChecklistWords>> = {
  en: {
    title: (design) => `Hanging a trap: ${design}`,
    blanks: ['Trap', 'Station', 'Day', 'By'],
    sections: {
      before: 'Beware',
      materials: 'Take along',
      place: 'Choose the place',
      hang: 'Hang it',
      gloves: 'Gloves: one line for each species',
      sources: 'Where this comes from',
    },
    height: (height) => `Keep the opening at ${height} above ground all season.`,
    heightUnknown: 'Height of the opening: ______ (the catalogue knows none for this design; ask the coordinator).',
    gloves: (insect) => `${insect}: fresh gloves on, lures out of their own bag, gloves off`,
    noInsects: 'Species: ______________  fresh gloves on, lures out of their own bag, gloves off',
    label: 'The product label, local law and a licensed adviser come before anything printed here.',
    invented: 'invented',
  },
  es: {
    title: (design) => `Colgar una trampa: ${design}`,
    blanks: ['Trampa', 'Estación', 'Día', 'Por'],
    sections: {
      before: 'Cuidado',
      materials: 'Llevar',
      place: 'Elegir el lugar',
      hang: 'Colgarla',
      gloves: 'Guantes: una línea por especie',
      sources: 'De dónde viene esto',
    },
    height: (height) => `Mantenga la abertura a ${height} del suelo toda la temporada.`,
    heightUnknown: 'Altura de la abertura: ______ (el catálogo no tiene ninguna para este diseño; pregunte a la coordinación).',
    gloves: (insect) => `${insect}: guantes nuevos, atrayentes de su propia bolsa, guantes fuera`,
    noInsects: 'Especie: ______________  guantes nuevos, atrayentes de su propia bolsa, guantes fuera',
    label: 'La etiqueta del producto, la ley local y un asesor con licencia van antes que todo lo impreso aquí.',
    invented: 'inventado',
  },
};
