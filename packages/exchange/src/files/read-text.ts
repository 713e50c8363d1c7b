import { isUtf8 } from 'node:buffer';
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { ok, type Result, refuse } from '@duskwatch/core';

/** Larger than a national network's season; smaller than what would exhaust a small machine. */
const DEFAULT_MAX_BYTES = 64 * 1024 * 1024;

/** A file's bytes, refused by its size before any is read. */
export async function readBytes(path: string, file = basename(path), maxBytes = DEFAULT_MAX_BYTES): Promise<Result<Buffer>> {
  const about = await stat(path).catch(() => null);
  if (about === null || !about.isFile()) {
    const got = about === null ? 'no such file' : 'not a file';
    return refuse({ where: { file }, got, expected: 'a file that can be read', fix: `Check the path ${path}.` });
  }
  if (about.size > maxBytes) {
    return refuse({
      where: { file },
      got: `a file of ${megabytes(about.size)}`,
      expected: `at most ${megabytes(maxBytes)}`,
      fix: 'Split it by season: parts are imported one after another.',
    });
  }
  return ok(await readFile(path));
}

export async function readText(path: string, file = basename(path), maxBytes = DEFAULT_MAX_BYTES): Promise<Result<string>> {
  const bytes = await readBytes(path, file, maxBytes);
  return bytes.ok ? decodeText(bytes.value, file) : bytes;
}

/** UTF-8 text with or without a byte order mark; anything else is named for what it looks like. */
export function decodeText(bytes: Uint8Array, file: string): Result<string> {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const refused = (got: string, fix: string, row?: number) =>
    refuse({ where: row === undefined ? { file } : { file, row }, got, expected: 'plain text in UTF-8', fix });
  if (startsWith(buffer, 0x50, 0x4b, 0x03, 0x04)) {
    return refused(
      'a workbook (XLSX) or other zip file',
      'Save the sheet as CSV, or give the file the ending .xlsx and import it as a sheet.',
    );
  }
  if (startsWith(buffer, 0xd0, 0xcf, 0x11, 0xe0)) return refused('an old workbook (XLS)', 'Save it as CSV (UTF-8).');
  if (startsWith(buffer, 0xff, 0xfe) || startsWith(buffer, 0xfe, 0xff)) {
    return refused('text in UTF-16', 'Save it again as "CSV UTF-8", or choose the encoding UTF-8.');
  }
  if (buffer.includes(0)) return refused('a binary file', 'Save the table as CSV (UTF-8).');
  if (!isUtf8(buffer)) {
    const row = firstBadLine(buffer);
    return refused('bytes that are not UTF-8, as in Latin-1 or Windows-1252', 'Save it again as "CSV UTF-8".', row);
  }
  const start = startsWith(buffer, 0xef, 0xbb, 0xbf) ? 3 : 0;
  return ok(buffer.toString('utf8', start));
}

function startsWith(buffer: Buffer, ...signature: number[]): boolean {
  return signature.every((byte, index) => buffer[index] === byte);
}

function firstBadLine(buffer: Buffer): number {
  let line = 1;
  let at = 0;
  while (at < buffer.length) {
    const newline = buffer.indexOf(0x0a, at);
    const end = newline === -1 ? buffer.length : newline;
    if (!isUtf8(buffer.subarray(at, end))) return line;
    at = end + 1;
    line += 1;
  }
  return line;
}

const megabytes = (bytes: number): string => {
  const size = bytes / (1024 * 1024);
  return size >= 1 ? `${Number(size.toFixed(1))} MB` : `${bytes.toLocaleString('en')} bytes`;
};
