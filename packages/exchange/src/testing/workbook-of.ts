import ExcelJS, { type Worksheet } from 'exceljs';

/** The bytes of an XLSX workbook whose sheets are filled by the given functions. */
export async function workbookOf(sheets: Readonly<Record<string, (sheet: Worksheet) => void>>): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  for (const [name, fill] of Object.entries(sheets)) fill(workbook.addWorksheet(name));
  return new Uint8Array(await workbook.xlsx.writeBuffer());
}

export const utc = (iso: string): Date => new Date(`${iso}T00:00:00Z`);
