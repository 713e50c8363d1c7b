/**
 * A backup as a folder: `duskwatch.sqlite`, the photos as a data folder keeps them, and `SHA256SUMS`, which
 * `sha256sum -c` reads as well.
 */
import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, sep } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { type Problem, photoSchema, type Result, refuse } from '@duskwatch/core';
import { restoreFile, type Store, StoreError } from '@duskwatch/store';
import { photoName, photoPath, photosIn } from './photos.ts';

/** What a data folder and a backup of it hold. */
export const DATABASE_FILE = 'duskwatch.sqlite';
export const PHOTOS = 'photos';

export const SUMS_FILE = 'SHA256SUMS';

/** What was copied, and read back. */
export interface Kept {
  readonly revisions: number;
  readonly photos: number;
  /** Photos that checks name and that are not here: on the way from a phone, or lost. */
  readonly missing: readonly string[];
}

/** Writes a new folder that appears under its name when all in it was read back and found equal, and not before. */
export async function writeBackup(
  store: Pick<Store, 'verify' | 'backup'>,
  photoFolder: string,
  to: string,
): Promise<Result<Kept>> {
  if (existsSync(to))
    throw new StoreError('file-exists', `${to} exists already, and a backup never overwrites. Name another folder.`);
  const part = `${to}.part`;
  await rm(part, { recursive: true, force: true });
  try {
    const { problems: unsound } = await store.verify();
    if (unsound.length > 0) return refuse(...unsound);
    await mkdir(part);
    // The database first: what photos it names came before, and stay.
    const { revisions, photos: named } = await store.backup(join(part, DATABASE_FILE));
    const names = await photosIn(photoFolder).names();
    const altered = await copyPhotos(names, photoFolder, join(part, PHOTOS));
    if (altered.length > 0) return refuse(...altered);
    await writeSums(part, names);
    const wrong = await faultsIn(part);
    if (wrong.length > 0) return refuse(...wrong.map((problem) => ({ ...problem, fix: ANOTHER_DISK })));
    await rename(part, to);
    await flush(dirname(to));
    return { ok: true, value: kept(revisions, named, names) };
  } finally {
    await rm(part, { recursive: true, force: true });
  }
}

/** Checks a backup and brings it into a data folder; the database comes last, so that no part of it is taken for the whole. */
export async function readBackup(backup: string, data: string): Promise<Result<Kept>> {
  const to = join(data, DATABASE_FILE);
  if (existsSync(to))
    throw new StoreError('file-exists', `${to} exists already, and a restore never overwrites. Name a new folder with --data.`);
  const isFile = (await stat(backup)).isFile();
  const database = isFile ? backup : join(backup, DATABASE_FILE);
  const photos = join(backup, PHOTOS);
  const problems = isFile ? [] : await faultsIn(backup);
  if (problems.length > 0) return refuse(...problems);
  await mkdir(data, { recursive: true });
  const names = isFile ? [] : await photosIn(photos).names();
  const altered = await copyPhotos(names, photos, join(data, PHOTOS));
  if (altered.length > 0) return refuse(...altered);
  const { revisions, photos: named } = await restoreFile(database, to);
  await flush(data);
  return { ok: true, value: kept(revisions, named, await photosIn(join(data, PHOTOS)).names()) };
}

function kept(revisions: number, named: readonly string[], names: readonly string[]): Kept {
  const here = new Set(names);
  return { revisions, photos: names.length, missing: named.filter((photo) => !here.has(photo)) };
}

/** A photo is right when its bytes have the SHA-256 that is its name; so read at the source, and again from the copy. */
async function copyPhotos(names: readonly string[], from: string, to: string): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const name of names) {
    const bytes = await photosIn(from).get(name);
    if (bytes === null || photoName(bytes) !== name) {
      problems.push(altered(join(from, photoPath(name))));
      continue;
    }
    await photosIn(to).put(bytes);
    const written = await photosIn(to).get(name);
    if (written === null || photoName(written) !== name) problems.push(notAsWritten(join(to, photoPath(name))));
  }
  return problems;
}

async function writeSums(folder: string, photos: readonly string[]): Promise<void> {
  const lines = [
    `${await sha256(join(folder, DATABASE_FILE))}  ${DATABASE_FILE}`,
    ...photos.map((photo) => `${photo}  ${PHOTOS}/${photo.slice(0, 2)}/${photo}`),
  ];
  const file = await open(join(folder, SUMS_FILE), 'wx');
  try {
    await file.writeFile(`${lines.join('\n')}\n`);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** What a backup no longer holds as it was written. A data folder that was copied by hand has no list of sums: none are told. */
async function faultsIn(folder: string): Promise<Problem[]> {
  const list = join(folder, SUMS_FILE);
  if (!existsSync(list)) return [];
  const problems: Problem[] = [];
  for (const line of (await readFile(list, 'utf8')).split('\n').filter(Boolean)) {
    const [sum = '', name = ''] = line.split('  ');
    const known = name === DATABASE_FILE || photoSchema.safeParse(basename(name)).success;
    const file = join(folder, ...name.split('/'));
    if (!known || !file.startsWith(folder + sep)) problems.push(changed(list, `the line ${JSON.stringify(line)}`));
    else if (!existsSync(file)) problems.push(changed(file, 'no such file'));
    else if ((await sha256(file)) !== sum) problems.push(changed(file, 'other bytes'));
  }
  return problems;
}

async function sha256(file: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(file), hash);
  return hash.digest('hex');
}

/** A name is on disk once its folder is. Windows opens no folder, and needs none. */
async function flush(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const altered = (file: string): Problem => ({
  where: { file },
  got: 'bytes that are not the photo',
  expected: 'the photo whose SHA-256 is the name of the file',
  fix: 'Bring the file back from an earlier backup, or move it elsewhere: its check then says that the photo is not here. Then do this again.',
});

const ANOTHER_DISK = 'Write to another disk, and have this one looked at.';

const notAsWritten = (file: string): Problem => ({
  where: { file },
  got: 'other bytes than were written',
  expected: 'the photo as it was written',
  fix: ANOTHER_DISK,
});

const changed = (file: string, got: string): Problem => ({
  where: { file },
  got,
  expected: `the backup as it was written, by its ${SUMS_FILE}`,
  fix: 'Take another backup. If there is none, the SQLite file in this one may still be sound: restore that file by its own name.',
});
