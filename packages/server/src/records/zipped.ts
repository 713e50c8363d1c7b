/** Files as one zip, made while it is sent: of a large one no more is held at a time than a piece. */
import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';

export interface ZippedFile {
  readonly name: string;
  readonly from: { readonly text: string } | { readonly path: string };
  /** Pictures gain nothing by being packed once more. */
  readonly packed: boolean;
}

/** Bytes packed in one go: a few milliseconds, between which others are served. */
const PIECE = 64 * 1024;

/** Fails while it is read when a file cannot be read. */
export const zipped = (files: Iterable<ZippedFile>): Readable => Readable.from(piecesOf(files));

async function* piecesOf(files: Iterable<ZippedFile>): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    ready.push(piece);
  });
  for (const { name, from, packed } of files) {
    const entry = packed ? new ZipDeflate(name) : new ZipPassThrough(name);
    zip.add(entry);
    const bytes =
      'text' in from ? partsOf(new TextEncoder().encode(from.text)) : createReadStream(from.path, { highWaterMark: PIECE });
    for await (const part of bytes) {
      entry.push(new Uint8Array(part));
      yield* ready.splice(0);
    }
    entry.push(new Uint8Array(), true);
    yield* ready.splice(0);
  }
  zip.end();
  yield* ready.splice(0);
}

async function* partsOf(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let start = 0; start < bytes.length; start += PIECE) {
    yield bytes.subarray(start, start + PIECE);
    await new Promise(setImmediate);
  }
}
