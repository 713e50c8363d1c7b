/** Every string of the forms that print labels and checklists, in Spanish. */
import type { DocumentsWords } from './documents.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const documentsEs: DocumentsWords = {
  open: 'Imprimir etiquetas',
  title: 'Etiquetas y listas',
  grid: 'Hoja',
  gridName: (paper, columns, rows, size) => `${paper === 'Letter' ? 'Carta' : paper}, ${columns} × ${rows} etiquetas de ${size}`,
  gridNote: 'Las hojas varían en un milímetro o así. Imprima al tamaño real (100 %), primero con bordes en papel común.',
  start: 'Primera etiqueta',
  startNote: (of) => `De ${of}, contadas por filas: en una hoja empezada, la primera que queda.`,
  which: 'Trampas',
  listed: (n) => `las de esta lista (${n})`,
  all: 'todas las que cuelgan o se colgarán',
  language: 'Idioma',
  contact: 'Cómo hablar con la coordinación',
  contactNote: 'Un nombre y un teléfono. Va en cada etiqueta y se recuerda en este aparato.',
  outlines: 'Dibujar los bordes, para una prueba',
  count: (labels, sheets) => `${plural(labels, 'etiqueta', 'etiquetas')} en ${plural(sheets, 'hoja', 'hojas')}.`,
  legible: (letters, way) => `Códigos en letras de ${letters} mm de alto, legibles desde unos ${way}.`,
  rule: (source, standing) => `Según: ${source} (${standing}). De día y con buena vista; menos tras un vidrio con polvo.`,
  leads: (origin) => `Los códigos abren ${origin}.`,
  onlyHere: (origin) =>
    `Los códigos abren ${origin}, adonde ningún teléfono llega: este servidor atiende solo a esta máquina. Sírvalo antes bajo una dirección.`,
  withoutCode: (traps) => `Demasiado largos para un código en estas etiquetas: ${traps}. Use etiquetas más grandes.`,
  replaced: (traps) => `Letras que no se pueden imprimir, puestas como «?»: ${traps}.`,
  none: 'Ninguna trampa que etiquetar.',
  make: 'Descargar las etiquetas (PDF)',
  making: 'Haciéndolas …',
  failed: 'No se pudieron hacer las etiquetas.',
  file: 'etiquetas-trampas',
  checklists: {
    title: 'Listas para colgar',
    text: 'Materiales, lugar, altura, guantes por especie y de qué cuidarse, una página por diseño.',
    paper: 'Papel',
    make: 'Descargar las listas (PDF)',
    file: 'listas-para-colgar',
  },
};
