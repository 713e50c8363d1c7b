/** What a path is, so that one command can take whatever somebody has. */
import { readdir, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { allTables, ok, type RecordKind, type Result, refuse, type SheetProposal } from '@duskwatch/core';
import { delimiterOf, scanRows } from './csv/scan-rows.ts';
import { decodeText, readBytes } from './files/read-text.ts';
import { isNoaaHeader } from './noaa/read-noaa-daily.ts';
import { type ProposeOptions, proposeMatch } from './sheet/propose-match.ts';
import { tableOfHeader } from './table/match-header.ts';

export type Recognised =
  | { readonly is: 'program-folder'; readonly dir: string }
  /** One table of a program folder, known by its header. */
  | { readonly is: 'table'; readonly kind: RecordKind; readonly file: string; readonly text: string }
  | { readonly is: 'noaa-daily'; readonly file: string; readonly text: string }
  /** Counts in another shape: to be read with `applyMatch` once the match's questions are answered. */
  | { readonly is: 'sheet'; readonly file: string; readonly bytes: Uint8Array; readonly proposal: SheetProposal };

export interface RecogniseOptions extends ProposeOptions {
  readonly maxBytes?: number;
}

/** Tells what a path is; refused with what was found where it is nothing that can be read. */
export async function recognise(path: string, options: RecogniseOptions = {}): Promise<Result<Recognised>> {
  const about = await stat(path).catch(() => null);
  if (about?.isDirectory()) return folder(path);
  const file = basename(path);
  const bytes = await readBytes(path, file, options.maxBytes);
  if (!bytes.ok) return bytes;
  const text = decodeText(bytes.value, file);
  if (text.ok) {
    const header = firstRow(text.value);
    const kind = tableOfHeader(header);
    if (kind !== null) return ok({ is: 'table', kind, file, text: text.value });
    if (isNoaaHeader(header)) return ok({ is: 'noaa-daily', file, text: text.value });
  }
  const match = await proposeMatch(bytes.value, file, options);
  return match.ok ? ok({ is: 'sheet', file, bytes: bytes.value, proposal: match.value.proposal }) : match;
}

async function folder(dir: string): Promise<Result<Recognised>> {
  const names = (await readdir(dir)).map((name) => name.toLowerCase());
  if (allTables.some(({ file }) => names.includes(file))) return ok({ is: 'program-folder', dir });
  return refuse({
    where: { file: dir },
    got: names.length === 0 ? 'an empty folder' : 'a folder with none of the tables of a program',
    expected: 'fields.csv, traps.csv and checks.csv in the folder',
    fix: 'Name the folder that holds them, or one file.',
  });
}

/** The header, reading no further than its own line or two. */
function firstRow(text: string): readonly string[] {
  let header: readonly string[] = [];
  const start = text.slice(0, 20_000);
  scanRows(start, delimiterOf(start), (cells) => {
    if (header.length === 0) header = cells;
  });
  return header;
}
