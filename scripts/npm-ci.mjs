/** `npm ci`, and what it came to grief over in a sentence that says what to do. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { node, run } from './lib.mjs';

/** What npm's messages tell of, most telling first. The codes are Node's and npm's own. */
const REASONS = [
  [/ENOSPC/, 'The disk is full. Make room (the packages take about 500 MB)'],
  [/EACCES|EPERM|EROFS/, 'npm may not write here. See who owns this folder and the one that `npm config get cache` names'],
  [
    /EUSAGE.*in sync/s,
    'package.json and package-lock.json do not belong together. Take both from one version of Duskwatch, or run `npm install` if it was you who changed what it needs',
  ],
  [
    /CERT|SELF_SIGNED/,
    'Something between here and the npm registry shows a certificate that Node does not trust. Name the authority in NODE_EXTRA_CA_CERTS',
  ],
  [
    /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|SOCKET_TIMEOUT|FETCH_ERROR/,
    'The npm registry cannot be reached. Check the network, and `npm config get proxy` where you need one',
  ],
  [
    /E401|E403|E407|ENEEDAUTH/,
    'The npm registry does not let you in. See which with `npm config get registry`, and whether it wants you to sign in with `npm login`',
  ],
  [
    /EINTEGRITY|E404|ETARGET/,
    'The npm registry gave out another package than the lock names. See which with `npm config get registry`',
  ],
  [/ E5\d\d\b/, 'The npm registry is out of order. Wait a while'],
];

/** What npm says of a file that it could not write. It says so as a warning, goes on, and ends as if all were well. */
const UNWRITTEN = /TAR_ENTRY_ERROR/;

/** Installs what a folder's lock names. Resolves to whether that went well; where not, what to do has been said. */
export async function npmCi(folder, ...options) {
  let said = '';
  const heard = (part) => {
    said += part;
  };
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=warn', ...options];
  const ownScript = process.env.npm_execpath;
  const settings = { cwd: folder, heard };
  // As the npm that started us, or as the one on the path.
  const code = ownScript?.endsWith('.js') ? await node([ownScript, ...args], settings) : await run('npm', args, settings);
  const unwritten = UNWRITTEN.test(said);
  if (code === 0 && !unwritten) return true;
  console.error(said.split('\n').filter(isTelling).join('\n'));
  // By this record the next run would take half a package for a whole one.
  if (unwritten) rmSync(join(folder, 'node_modules', '.package-lock.json'), { force: true });
  const reason = REASONS.find(([sign]) => sign.test(said))?.[1] ?? 'Installing failed: what npm said is above. Mend that';
  console.error(
    code === 127
      ? 'There is no npm, which comes with Node.js. Get both from nodejs.org.'
      : `\n${reason}, then run the same command again.`,
  );
  return false;
}

/** Warnings are about other people's packages, but for those of files that were not written. */
const isTelling = (line) => UNWRITTEN.test(line) || !/^npm warn/i.test(line);
