/** A backup as one zip, unpacked while it comes: nothing but what a backup holds, and no more than fits one. */
import { once } from 'node:events';
import { createWriteStream, mkdirSync, type WriteStream } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { finished } from 'node:stream/promises';
import { type Problem, type Result, refuse } from '@duskwatch/core';
import { Unzip, UnzipInflate, UnzipPassThrough } from 'fflate';
import { DATABASE_FILE, PHOTOS, SUMS_FILE } from './backup.ts';

const PHOTO = new RegExp(`^${PHOTOS}/[0-9a-f]{2}/[0-9a-f]{64}$`);

/** A database packs to a tenth, rarely to a fiftieth; what is said to hold more than this is no backup. */
const MOST_UNPACKED = 200;
const SPARE_BYTES = 64 * 1024 * 1024;

export interface UnzipOptions {
  /** More than this is refused whatever was sent. */
  readonly mostBytes?: number;
}

/** Unpacks into a new folder, as `writeBackup` writes one. What is left of it when it is refused is for whoever asked to clear. */
export async function unzipBackup(
  zip: AsyncIterable<Uint8Array>,
  folder: string,
  { mostBytes = 64 * 1024 ** 3 }: UnzipOptions = {},
): Promise<Result<null>> {
  await mkdir(folder, { recursive: true });
  const files = new Map<string, WriteStream>();
  let fault: Problem | null = null;
  let trouble: Error | null = null;
  let came = 0;
  let unpacked = 0;
  const unzip = new Unzip((entry) => {
    if (entry.name.endsWith('/')) return;
    const known = entry.name === DATABASE_FILE || entry.name === SUMS_FILE || PHOTO.test(entry.name);
    if (!known || files.has(entry.name)) {
      fault ??= noBackup(`${known ? 'twice ' : ''}${entry.name.slice(0, 120)}`);
      return;
    }
    const path = join(folder, ...entry.name.split('/'));
    mkdirSync(dirname(path), { recursive: true });
    const out = createWriteStream(path, { flags: 'wx' });
    // A disk that is full is no fault of the backup.
    out.once('error', (error) => {
      trouble ??= error;
    });
    files.set(entry.name, out);
    entry.ondata = (error, piece, last) => {
      if (error) throw error;
      unpacked += piece.length;
      if (unpacked > Math.min(mostBytes, came * MOST_UNPACKED + SPARE_BYTES)) fault ??= tooLarge(entry.name);
      if (fault === null) out.write(piece);
      if (last) out.end();
    };
    entry.start();
  });
  unzip.register(UnzipInflate);
  unzip.register(UnzipPassThrough);
  const push = (piece: Uint8Array, last = false) => {
    try {
      unzip.push(new Uint8Array(piece), last);
    } catch (error) {
      fault ??= broken((error as Error).message);
    }
  };
  try {
    // What was found wrong is said once all of it has come: nobody hears an answer while still sending.
    for await (const piece of zip) {
      came += piece.length;
      for (let start = 0; start < piece.length && fault === null; start += PIECE) push(piece.subarray(start, start + PIECE));
      // No more is held than the disk can take.
      for (const file of files.values()) if (file.writableNeedDrain) await once(file, 'drain');
    }
    if (fault === null) push(new Uint8Array(), true);
    for (const file of files.values()) {
      if (fault !== null) break;
      if (file.writableEnded) await finished(file);
      else fault = broken('the end of it is missing');
    }
  } catch (error) {
    fault ??= broken((error as Error).message);
  } finally {
    for (const file of files.values()) file.destroy();
  }
  if (trouble !== null) throw trouble;
  if (fault !== null) return refuse(fault);
  // Without its sums nothing would show that it came as it was sent.
  for (const needed of [DATABASE_FILE, SUMS_FILE]) if (!files.has(needed)) return refuse(noBackup(`no ${needed}`));
  return { ok: true, value: null };
}

/** Bytes unpacked in one go: what a packed piece unpacks to is judged before the next. */
const PIECE = 16 * 1024;

const noBackup = (got: string): Problem => ({
  where: {},
  got,
  expected: `the zip of a backup: ${DATABASE_FILE}, ${SUMS_FILE} and photos`,
  fix: 'Choose a file that Make a backup gave, as it was saved.',
});

const tooLarge = (name: string): Problem => ({
  where: { file: name },
  got: 'more than a file of this size can hold',
  expected: 'the zip of a backup',
  fix: 'Choose a file that Make a backup gave, as it was saved.',
});

const broken = (got: string): Problem => ({
  where: {},
  got,
  expected: 'a zip that is whole',
  fix: 'Fetch the file again from where it is kept: part of it is missing or was altered.',
});
