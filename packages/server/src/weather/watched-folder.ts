/** The folder into which a logger or a person puts tables of weather, and what is new in it. */
import { mkdir, readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';

export interface FoundFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Tells a file from the same one changed. */
  readonly mark: string;
}

const MOST_BYTES = 64 * 1024 * 1024;
/** A file that is being written is left alone until it has come to rest. */
const AT_REST_MS = 2_000;

/** Files whose names begin as said and that are not known by their mark, the oldest first. The folder is made when missing. */
export async function newFiles(
  folder: string,
  beginning: string,
  isKnown: (name: string, mark: string) => boolean,
  now: number,
): Promise<FoundFile[]> {
  await mkdir(folder, { recursive: true });
  const found: (FoundFile & { readonly changedMs: number })[] = [];
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.startsWith(beginning) || entry.name.startsWith('.')) continue;
    const path = join(folder, entry.name);
    const { size, mtimeMs } = await stat(path);
    const mark = `${size} ${mtimeMs}`;
    if (isKnown(entry.name, mark) || size > MOST_BYTES || Math.abs(now - mtimeMs) < AT_REST_MS) continue;
    found.push({ name: entry.name, bytes: await readFile(path), mark, changedMs: mtimeMs });
  }
  return found.sort((a, b) => a.changedMs - b.changedMs);
}
