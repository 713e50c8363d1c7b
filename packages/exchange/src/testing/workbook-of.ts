/** XLSX workbooks written part by part as ECMA-376 has them, so that they owe nothing to what reads them. */
import { crc32 } from 'node:zlib';
import { columnLetters } from '../sheet/grid.ts';

export type WrittenCell =
  | string
  | number
  | null
  | Date
  | { readonly error: string }
  | { readonly formula: string; readonly result?: number }
  | { readonly runs: readonly string[] };

export interface WrittenSheet {
  readonly rows: readonly (readonly WrittenCell[])[];
  /** As `A2:A3`. */
  readonly merged?: readonly string[];
}

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** The bytes of a workbook with these sheets. */
export function workbookOf(sheets: Readonly<Record<string, WrittenSheet>>): Uint8Array {
  const numbered = Object.entries(sheets).map(([name, sheet], index) => ({ name, sheet, n: index + 1 }));
  const each = (write: (one: (typeof numbered)[number]) => string) => numbered.map(write).join('');
  return zipOf({
    '[Content_Types].xml': `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${TYPE}.styles+xml"/>${each(({ n }) => `<Override PartName="/xl/worksheets/sheet${n}.xml" ContentType="${TYPE}.worksheet+xml"/>`)}</Types>`,
    '_rels/.rels': `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${each(({ name, n }) => `<sheet name="${name}" sheetId="${n}" r:id="rId${n}"/>`)}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${PACKAGE}/relationships">${each(({ n }) => `<Relationship Id="rId${n}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${n}.xml"/>`)}<Relationship Id="rIdStyles" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
    // The second format is number 14, a date (ECMA-376 part 1, 18.8.30).
    'xl/styles.xml': `<styleSheet xmlns="${MAIN}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    ...Object.fromEntries(numbered.map(({ sheet, n }) => [`xl/worksheets/sheet${n}.xml`, worksheet(sheet)])),
  });
}

function worksheet({ rows, merged = [] }: WrittenSheet): string {
  const data = rows.map((cells, r) => `<row r="${r + 1}">${cells.map((cell, c) => cellXml(cell, r, c)).join('')}</row>`);
  const ranges = merged.map((range) => `<mergeCell ref="${range}"/>`).join('');
  return `<worksheet xmlns="${MAIN}"><sheetData>${data.join('')}</sheetData>${ranges && `<mergeCells>${ranges}</mergeCells>`}</worksheet>`;
}

function cellXml(cell: WrittenCell, row: number, column: number): string {
  if (cell === null) return '';
  const at = `r="${columnLetters(column)}${row + 1}"`;
  if (typeof cell === 'number') return `<c ${at}><v>${cell}</v></c>`;
  if (typeof cell === 'string') return `<c ${at} t="inlineStr"><is><t>${cell}</t></is></c>`;
  if (cell instanceof Date) return `<c ${at} s="1"><v>${serial(cell)}</v></c>`;
  if ('error' in cell) return `<c ${at} t="e"><v>${cell.error}</v></c>`;
  if ('runs' in cell) return `<c ${at} t="inlineStr"><is>${cell.runs.map((run) => `<r><t>${run}</t></r>`).join('')}</is></c>`;
  return `<c ${at}><f>${cell.formula}</f>${cell.result === undefined ? '' : `<v>${cell.result}</v>`}</c>`;
}

/** Days since 1899-12-30, as workbooks of this century count them. */
const serial = (date: Date): number => (date.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000;

export const utc = (iso: string): Date => new Date(`${iso}T00:00:00Z`);

/** A zip file that keeps its entries as they are (APPNOTE 6.3.10, 4.3). `claimed` is what it says an entry unpacks to, in bytes. */
export function zipOf(parts: Readonly<Record<string, string>>, claimed?: number): Uint8Array {
  const local: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const [name, text] of Object.entries(parts)) {
    const content = Buffer.from(HEAD + text);
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0);
    fields.writeUInt32LE(crc32(content), 10);
    fields.writeUInt32LE(content.length, 14);
    fields.writeUInt32LE(claimed ?? content.length, 18);
    fields.writeUInt16LE(name.length, 22);
    const entry = Buffer.concat([Buffer.from('PK\x03\x04'), fields, Buffer.from(name), content]);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(offset, 10);
    central.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00'), fields, place, Buffer.from(name)]));
    local.push(entry);
    offset += entry.length;
  }
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(central.length, 8);
  end.writeUInt16LE(central.length, 10);
  end.writeUInt32LE(Buffer.concat(central).length, 12);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...local, ...central, end]));
}
