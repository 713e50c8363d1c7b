import { tidyPassword } from '@duskwatch/core';
import { hash, type Options, verify } from '@node-rs/argon2';

/**
 * Argon2id with 19 MiB, two passes, one lane: the least the OWASP Password Storage Cheat Sheet asks for, chosen so
 * that a small server can check several passwords at once. RFC 9106, section 4, recommends 64 MiB and three passes
 * where memory allows. Salt of 16 bytes (RFC 9106, section 3.1), made by the library.
 */
const ARGON2: Options = {
  // Argon2id (the library's names are types only).
  algorithm: 2,
  memoryCost: 19_456,
  timeCost: 2,
  parallelism: 1,
};

/** Checked in place of the password of somebody who is not here, so that both answers take the same time. */
const nobody = hash('nobody has this password', ARGON2);

export const hashPassword = (password: string): Promise<string> => hash(tidyPassword(password), ARGON2);

/** Whether a password is right. Without a hash it never is, and that takes as long. */
export async function isPassword(password: string, passwordHash: string | null): Promise<boolean> {
  const right = await verify(passwordHash ?? (await nobody), tidyPassword(password));
  return right && passwordHash !== null;
}
