/// <reference lib="webworker" />
/**
 * Lets the app start without signal. The round's own data is not kept here but in IndexedDB, where it can be trusted
 * to survive; this worker keeps the files of the app, and the last answer for This week.
 *
 * A new version waits until the page says that no round is under way: nothing changes in a scout's hands.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

/** Filled in by the build: the files of the shell and the round, and a hash over all of them. */
declare const __PRECACHE__: { readonly version: string; readonly files: readonly string[] };

const SHELL = `duskwatch-shell-${__PRECACHE__.version}`;
/** Files of other pages, kept as they are used; their names hold a hash of what is in them. */
const USED = 'duskwatch-used';
const ANSWERS = 'duskwatch-answers';
const DOCUMENT = '/index.html';
/** Signing in or out. */
const CHANGES_PERSON = new Set(['/api/session', '/api/sessions', '/api/first-person', '/api/invitations/accept']);
const KEPT_ANSWERS = new Set(['/api/week', '/api/program']);
/** Of single cells of the week that is kept. */
const EVIDENCE = '/api/advice/';

worker.addEventListener('install', (event) => {
  const files = __PRECACHE__.files.map((file) => new Request(file, { cache: 'no-cache' }));
  event.waitUntil(caches.open(SHELL).then((cache) => cache.addAll(files)));
});

worker.addEventListener('activate', (event) => event.waitUntil(forgetOldShells()));

worker.addEventListener('message', (event) => {
  if (event.data === 'take-over') event.waitUntil(worker.skipWaiting());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (origin !== worker.location.origin) return;
  const answer = answerTo(request, pathname);
  if (answer) event.respondWith(answer);
});

/** Null leaves a request to the network, as if there were no worker. */
function answerTo(request: Request, path: string): Promise<Response> | null {
  if (request.method !== 'GET') return CHANGES_PERSON.has(path) ? forgetAnswers(request) : null;
  if (request.mode === 'navigate') return isOfThePhone(path) ? shellFirst(request) : networkFirst(request, DOCUMENT);
  if (KEPT_ANSWERS.has(path) || path.startsWith(EVIDENCE)) return keptAnswer(request, path);
  if (path.startsWith('/assets/')) return keptFile(request);
  return __PRECACHE__.files.includes(path) ? fromShell(request) : null;
}

const isOfThePhone = (path: string) => /^\/(round|scout)(\/|$)/.test(path);

const shellFirst = async (request: Request) => (await inShell(DOCUMENT)) ?? fetch(request);
const fromShell = async (request: Request) => (await inShell(request)) ?? fetch(request);
const inShell = async (file: RequestInfo) => (await caches.open(SHELL)).match(file, { ignoreSearch: true, ignoreVary: true });

/** Pages at a desk are always of the newest version; without a network they are of the one kept here. */
async function networkFirst(request: Request, otherwise: string): Promise<Response> {
  try {
    return await fetch(request);
  } catch (error) {
    const kept = await inShell(otherwise);
    if (kept) return kept;
    throw error;
  }
}

async function keptFile(request: Request): Promise<Response> {
  const kept = (await inShell(request)) ?? (await (await caches.open(USED)).match(request));
  if (kept) return kept;
  const fresh = await fetch(request);
  if (fresh.ok) await (await caches.open(USED)).put(request, fresh.clone());
  return fresh;
}

async function keptAnswer(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(ANSWERS);
  let fresh: Response;
  try {
    fresh = await fetch(request);
  } catch (error) {
    const kept = await cache.match(request);
    if (kept) return kept;
    throw error;
  }
  if (fresh.ok) {
    // The evidence of an older week would contradict the verbs of this one.
    if (path === '/api/week') await forgetEvidence(cache);
    await cache.put(request, fresh.clone());
  }
  // Who may no longer read it on the server does not read it here either.
  if (fresh.status === 401 || fresh.status === 403) await caches.delete(ANSWERS);
  return fresh;
}

async function forgetEvidence(cache: Cache): Promise<void> {
  const old = (await cache.keys()).filter(({ url }) => new URL(url).pathname.startsWith(EVIDENCE));
  await Promise.all(old.map((request) => cache.delete(request)));
}

/** What one person was told is not kept for the next; what they wrote waits in the outbox, which is theirs alone. */
async function forgetAnswers(request: Request): Promise<Response> {
  await caches.delete(ANSWERS);
  const answer = await fetch(request);
  // Once more: a question asked before may have been answered since.
  await caches.delete(ANSWERS);
  if (answer.ok && request.method === 'DELETE') await forgetRound();
  return answer;
}

/** Without the library that the page uses: a worker is small, because it is started for every file. */
async function forgetRound(): Promise<void> {
  const known = await indexedDB.databases();
  if (!known.some(({ name }) => name === 'duskwatch-round')) return;
  await new Promise<void>((resolve, reject) => {
    const opening = indexedDB.open('duskwatch-round');
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const write = opening.result.transaction('facts', 'readwrite');
      write.objectStore('facts').clear();
      write.oncomplete = () => resolve();
      write.onabort = () => reject(write.error);
    };
  }).catch(() => undefined);
}

async function forgetOldShells(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name === USED || (name.startsWith('duskwatch-shell-') && name !== SHELL));
  await Promise.all(old.map((name) => caches.delete(name)));
}
