/** What every table and list offers: to be taken along. */
export const tableEn = {
  take: 'Copy or save',
  takeOf: (what: string) => `Copy or save: ${what}`,
  copyText: 'Copy as text',
  copyCsv: 'Copy as CSV',
  saveCsv: 'Save as CSV',
  copied: 'Copied.',
  copyFailed: 'The browser refused to copy.',
};

export type TableWords = typeof tableEn;
