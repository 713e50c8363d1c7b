/** What is said when packages cannot be installed, each with the words in which npm 11 tells of it. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';

let folder;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'duskwatch-npm-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Installs with an npm that says this, and ends with this code; `says` null: with no npm at all. */
function install(says, code = 1) {
  const npm = join(folder, 'npm.js');
  writeFileSync(npm, `process.stderr.write(${JSON.stringify(says)}); process.exitCode = ${code};`);
  const script = `import { npmCi } from ${JSON.stringify(import.meta.resolve('./npm-ci.mjs'))};
    console.log(await npmCi(${JSON.stringify(folder)}));`;
  const { npm_execpath: _, PATH, ...env } = process.env;
  const here = says === null ? { PATH: folder } : { PATH, npm_execpath: npm };
  const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', script], {
    encoding: 'utf8',
    env: { ...env, ...here },
  });
  return { went: stdout.trim(), said: stderr };
}

it.each([
  ['a name that nobody knows', 'npm error code ENOTFOUND\nnpm error syscall getaddrinfo', 'cannot be reached. Check the network'],
  [
    'a network that is down',
    'npm error code EAI_AGAIN\nnpm error network request to https://registry.example/zod failed',
    'cannot be reached. Check the network',
  ],
  [
    'a registry that refuses to be connected with',
    'npm error code ECONNREFUSED\nnpm error FetchError: request to http://127.0.0.1:9/idb failed',
    'cannot be reached. Check the network',
  ],
  [
    'a registry that lets nobody in',
    'npm error code E403\nnpm error 403 Forbidden - GET https://registry.example/idb',
    'npm login',
  ],
  ['a registry that is ill', 'npm error code E503\nnpm error 503 Service Unavailable - GET https://registry.example/idb', 'Wait'],
  [
    'a certificate of a company’s own',
    'npm error code SELF_SIGNED_CERT_IN_CHAIN\nnpm error request to https://registry.example/idb failed',
    'NODE_EXTRA_CA_CERTS',
  ],
  ['a full disk', 'npm error code ENOSPC\nnpm error nospc ENOSPC: no space left on device, write', 'The disk is full. Make room'],
  [
    'a folder of somebody else',
    'npm error code EACCES\nnpm error syscall mkdir\nnpm error path /srv/duskwatch/node_modules',
    'npm may not write here',
  ],
  [
    'a lock of another version',
    'npm error code EUSAGE\nnpm error\nnpm error `npm ci` can only install packages when your package.json and package-lock.json or npm-shrinkwrap.json are in sync. Please update your lock file with `npm install` before continuing.\nnpm error Invalid: lock file’s idb@8.0.4 does not satisfy idb@8.0.3',
    'package.json and package-lock.json do not belong together',
  ],
  [
    'a package that is not the one locked',
    'npm error code EINTEGRITY\nnpm error Integrity checksum failed when using sha512: wanted sha512-Zd0 but got sha512-jd0.',
    'another package than the lock names',
  ],
  ['what nobody foresaw', 'npm error code EWHATEVER', 'what npm said is above'],
])('%s is told in a sentence that says what to do, beneath what npm said', (_, says, sentence) => {
  const { went, said } = install(says);
  expect(went).toBe('false');
  expect(said).toContain(says);
  const plain = said.trimEnd().split('\n').at(-1);
  expect(plain).toContain(sentence);
  expect(plain).toMatch(/, then run the same command again\.$/);
});

it('files that npm could not write are a failure, though npm ends as if all were well, and are not taken for installed', () => {
  const record = join(folder, 'node_modules', '.package-lock.json');
  mkdirSync(join(folder, 'node_modules'), { recursive: true });
  writeFileSync(record, '{}');
  const full = 'npm warn tar TAR_ENTRY_ERROR ENOSPC: no space left on device, write';
  const { went, said } = install(`npm warn deprecated glob@7.0.0: old\n${full}\n`, 0);
  expect(went).toBe('false');
  expect(said).toContain(full);
  expect(said).not.toContain('deprecated');
  expect(said).toContain('The disk is full. Make room');
  expect(existsSync(record)).toBe(false);
});

it('warnings about other people’s packages are kept quiet where all went well', () => {
  expect(install('npm warn deprecated glob@7.0.0: old\n', 0)).toEqual({ went: 'true', said: '' });
});

it('a machine without npm is told where to get one', () => {
  const { went, said } = install(null);
  expect(went).toBe('false');
  expect(said.trim()).toBe('There is no npm, which comes with Node.js. Get both from nodejs.org.');
});
