/** Photos as files named by the SHA-256 of their bytes: the same photo sent twice is one file. */
import { createHash } from 'node:crypto';
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { photoSchema } from '@duskwatch/core';
import { uuidv7 } from '@duskwatch/store';

export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotoType = (typeof PHOTO_TYPES)[number];
export const MAX_PHOTO_BYTES = 4 * 1024 * 1024;

export interface PhotoStore {
  /** The photo's name. On disk, whole, when this resolves. */
  put(bytes: Buffer): Promise<string>;
  get(photo: string): Promise<Buffer | null>;
  /** Of every photo kept here, in order; whether each is still what its name says is not looked at. */
  names(): Promise<string[]>;
}

/** The name of a photo with these bytes. */
export const photoName = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** Two letters for a folder, so that no folder grows beyond what people can look at. */
export const photoPath = (photo: string): string => join(photo.slice(0, 2), photo);

/**
 * What the bytes are by how they begin, whatever they are called; null: nothing that is kept here. JPEG (ITU-T T.81,
 * start of image), PNG (ISO/IEC 15948, 5.2), WebP (RFC 9649, 2.4).
 */
export function photoType(bytes: Buffer): PhotoType | null {
  if (bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff]))) return 'image/jpeg';
  if (bytes.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))) return 'image/png';
  if (bytes.toString('latin1', 0, 4) === 'RIFF' && bytes.toString('latin1', 8, 12) === 'WEBP') return 'image/webp';
  return null;
}

const isPhoto = (file: string) => photoSchema.safeParse(basename(file)).success && file === photoPath(basename(file));

export function photosIn(folder: string): PhotoStore {
  const fileOf = (photo: string) => join(folder, photoPath(photo));
  return {
    async put(bytes) {
      const photo = photoName(bytes);
      const inside = dirname(fileOf(photo));
      await mkdir(inside, { recursive: true });
      const part = join(inside, `${uuidv7()}.part`);
      try {
        const file = await open(part, 'wx');
        try {
          await file.writeFile(bytes);
          await file.sync();
        } finally {
          await file.close();
        }
        await rename(part, fileOf(photo));
      } finally {
        await rm(part, { force: true });
      }
      return photo;
    },
    async get(photo) {
      try {
        return await readFile(fileOf(photo));
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
        throw error;
      }
    },
    async names() {
      try {
        const files = await readdir(folder, { recursive: true });
        return files.flatMap((file) => (isPhoto(file) ? [basename(file)] : [])).sort();
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
        throw error;
      }
    },
  };
}
