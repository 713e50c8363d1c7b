import type { TableWords } from './table.en.ts';

export const tableEs: TableWords = {
  take: 'Copiar o guardar',
  takeOf: (what) => `Copiar o guardar: ${what}`,
  copyText: 'Copiar como texto',
  copyCsv: 'Copiar como CSV',
  saveCsv: 'Guardar como CSV',
  copied: 'Copiado.',
  copyFailed: 'El navegador no permitió copiar.',
};
