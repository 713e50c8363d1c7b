/** `npm ci`, and what it came to grief over in a sentence that says what to do. */
import { node, run } from './lib.mjs';

/** What npm's errors tell of, most telling first. The codes are Node's and npm's own. */
const REASONS = [
  [/ENOSPC/, 'The disk is full. Make room (the packages take about 500 MB)'],
  [/EACCES|EPERM|EROFS/, 'npm may not write here. See who owns this folder and the one that `npm config get cache` names'],
  [
    /CERT|SELF_SIGNED/,
    'Something between here and the npm registry shows a certificate that Node does not trust. Name the authority in NODE_EXTRA_CA_CERTS',
  ],
  [
    /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|SOCKET_TIMEOUT|FETCH_ERROR/,
    'The npm registry cannot be reached. Check the network, and `npm config get proxy` where you need one',
  ],
  [
    /EINTEGRITY|E404|ETARGET/,
    'The npm registry gave out another package than the lock names. See which with `npm config get registry`',
  ],
];

/** Installs what a folder's lock names. Resolves to whether that went well; where not, what to do has been said. */
export async function npmCi(folder, ...options) {
  let errors = '';
  const heard = (part) => {
    errors += part;
    process.stderr.write(part);
  };
  const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error', ...options];
  const ownScript = process.env.npm_execpath;
  const settings = { cwd: folder, heard };
  // As the npm that started us, or as the one on the path.
  const code = ownScript?.endsWith('.js') ? await node([ownScript, ...args], settings) : await run('npm', args, settings);
  if (code === 0) return true;
  const reason = REASONS.find(([sign]) => sign.test(errors))?.[1] ?? 'Installing failed: what npm said is above. Mend that';
  console.error(
    code === 127
      ? 'There is no npm, which comes with Node.js. Get both from nodejs.org.'
      : `\n${reason}, then run the same command again.`,
  );
  return false;
}
