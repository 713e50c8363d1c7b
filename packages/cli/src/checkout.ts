import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the checkout that this file, or the bundle made of it, lies in. */
export const checkoutRoot: string = findRoot(dirname(fileURLToPath(import.meta.url)));

/** Where `npm run build` puts the app. */
export const webRoot: string = join(checkoutRoot, 'packages', 'web', 'dist');

function findRoot(folder: string): string {
  const manifest = join(folder, 'package.json');
  if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).workspaces) return folder;
  const parent = dirname(folder);
  if (parent === folder) throw new Error(`${fileURLToPath(import.meta.url)} does not lie in a checkout of Duskwatch`);
  return findRoot(parent);
}
