/** Todos los textos del cambio de un identificador, en español. */
import type { RenamingWords } from './renaming.en.ts';

export const renamingEs: RenamingWords = {
  open: 'Cambiar el nombre corto',
  title: (name) => `Otro nombre corto para ${name}`,
  label: 'Nombre corto',
  text: 'Lo sigue todo lo que lo nombra: revisiones, atrayentes, muestras, las trampas que le informan. Lo dicho antes conserva el nombre con que se dijo.',
  labels:
    'Las etiquetas impresas llevan todavía el nombre viejo: imprima nuevas, y deje que los teléfonos envíen antes lo que guardan.',
  save: 'Cambiarlo',
  saved: (n) => `Cambiado en ${n} ${n === 1 ? 'registro' : 'registros'}.`,
};
