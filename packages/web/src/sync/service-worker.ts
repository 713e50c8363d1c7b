/// <reference lib="webworker" />
/**
 * Lets the app start without signal. Records and the round's own data are not kept here but in IndexedDB, where they can
 * be trusted to survive; this worker keeps the files of the app, and the last answers of the pages that a phone leads to.
 *
 * A new version waits until the page says that no round is under way: nothing changes in a scout's hands.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

/**
 * Filled in by the build: the files of the start, the round and scouting, without which nothing is installed; those of all
 * other pages, which come when the page says that nobody waits; and a hash over all of them.
 */
declare const __PRECACHE__: { readonly version: string; readonly files: readonly string[]; readonly later: readonly string[] };

const SHELL = `duskwatch-shell-${__PRECACHE__.version}`;
/** Files that are in neither list, kept as they are used; their names hold a hash of what is in them. */
const USED = 'duskwatch-used';
const ANSWERS = 'duskwatch-answers';
const DOCUMENT = '/index.html';
/** Signing in or out. */
const CHANGES_PERSON = new Set(['/api/session', '/api/sessions', '/api/first-person', '/api/invitations/accept']);
/** As the server answers for the present day; what is asked of another day is not for the field. */
const KEPT_ANSWERS =
  /^\/api\/(week|program|own-fields|traps|questions|questions\/open|conflicts|records\/(fields|traps|stages|samples|treatments|decisions|answers))$/;
/** One page for each field, trap, and cell of the week: the newest of them. */
const KEPT_PIECES = /^\/api\/((fields|traps)\/[^/]+|fields\/[^/]+\/flights|advice\/[^/]+\/[^/]+)$/;
const MOST_PIECES = 200;
/** Of single cells of the week that is kept. */
const EVIDENCE = '/api/advice/';
/** When a kept answer was read, in ms since 1970; the page reads it. */
const READ_AT = 'x-duskwatch-read';
/** A signal that carries nothing is none: after so long what is kept is shown, and what comes later put in its place. */
const PATIENCE_MS = 6_000;

worker.addEventListener('install', (event) => {
  const files = __PRECACHE__.files.map((file) => new Request(file, { cache: 'no-cache' }));
  event.waitUntil(caches.open(SHELL).then((cache) => cache.addAll(files)));
});

worker.addEventListener('activate', (event) => event.waitUntil(forgetOldShells()));

worker.addEventListener('message', (event) => {
  if (event.data === 'take-over') event.waitUntil(worker.skipWaiting());
  if (event.data === 'keep-pages') event.waitUntil(keepPages());
  if (Array.isArray(event.data?.keepAnswers)) event.waitUntil(keepAnswers(event.data.keepAnswers));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname, search } = new URL(request.url);
  if (origin !== worker.location.origin) return;
  const answer = answerTo(request, pathname, search);
  if (answer) event.respondWith(answer);
});

/** Null leaves a request to the network, as if there were no worker. */
function answerTo(request: Request, path: string, search: string): Promise<Response> | null {
  if (request.method !== 'GET') return CHANGES_PERSON.has(path) ? forgetAnswers(request) : null;
  if (request.mode === 'navigate') return isOfThePhone(path) ? shellFirst(request) : networkFirst(request, DOCUMENT);
  if (search === '' && (KEPT_ANSWERS.test(path) || KEPT_PIECES.test(path))) return keptAnswer(request, path);
  if (path.startsWith('/assets/')) return keptFile(request);
  return __PRECACHE__.files.includes(path) ? fromShell(request) : null;
}

const isOfThePhone = (path: string) => /^\/(round|scout|start)(\/|$)/.test(path);

const shellFirst = async (request: Request) => (await inShell(DOCUMENT)) ?? fetch(request);
const fromShell = async (request: Request) => (await inShell(request)) ?? fetch(request);
const inShell = async (file: RequestInfo) => (await caches.open(SHELL)).match(file, { ignoreSearch: true, ignoreVary: true });

/** Pages at a desk are always of the newest version; without a network they are of the one kept here. */
async function networkFirst(request: Request, otherwise: string): Promise<Response> {
  const kept = await inShell(otherwise);
  try {
    return (await withPatience(fetch(request), kept)).response;
  } catch (error) {
    if (kept) return kept;
    throw error;
  }
}

/** What the network gives, or what is kept where it is slow. */
async function withPatience(network: Promise<Response>, kept: Response | undefined) {
  if (!kept) return { response: await network, late: false };
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE_MS));
  const first = await Promise.race([network, late]);
  return { response: first ?? kept, late: first === null };
}

async function keptFile(request: Request): Promise<Response> {
  const kept = (await inShell(request)) ?? (await (await caches.open(USED)).match(request));
  if (kept) return kept;
  const fresh = await fetch(request);
  if (fresh.ok) await (await caches.open(USED)).put(request, fresh.clone());
  return fresh;
}

/** The files of all pages, a few at a time; what is here already is not asked for again, and what does not come is missing. */
async function keepPages(): Promise<void> {
  const cache = await caches.open(SHELL);
  const here = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
  for (const file of __PRECACHE__.later) if (!here.has(file)) await cache.add(file).catch(() => undefined);
  await tellPages('kept-pages');
}

/** Answers that came after what was kept had been given out: the page asks once more and is given them at once. */
const cameLate = new Set<string>();

async function keptAnswer(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(ANSWERS);
  const kept = await cache.match(request, { ignoreVary: true });
  if (kept && cameLate.delete(request.url)) return unmarked(kept);
  const network = fetch(request).then((fresh) => keepAnswer(cache, request, path, fresh));
  try {
    const { response, late } = await withPatience(network, kept);
    if (late)
      void network.then(
        () => {
          cameLate.add(request.url);
          return tellPages({ came: path });
        },
        () => undefined,
      );
    return response;
  } catch (error) {
    if (kept) return kept;
    throw error;
  }
}

/** The answers of pages that nobody has opened yet, one after the other; those that do not come are left as they were. */
async function keepAnswers(paths: readonly string[]): Promise<void> {
  const cache = await caches.open(ANSWERS);
  for (const path of paths) {
    const request = new Request(path, { headers: { accept: 'application/json' } });
    try {
      const { status } = await keepAnswer(cache, request, path, await fetch(request));
      if (status === 401) return;
    } catch {
      return;
    }
  }
  await tellPages('kept-answers');
}

async function keepAnswer(cache: Cache, request: Request, path: string, fresh: Response): Promise<Response> {
  if (fresh.ok) {
    // The evidence of an older week would contradict the verbs of this one.
    if (path === '/api/week') await forgetEvidence(cache);
    await cache.put(request, await marked(fresh.clone()));
    if (KEPT_PIECES.test(path)) await forgetOldPieces(cache);
  }
  // Who may no longer read it on the server does not read it here either.
  if (fresh.status === 401 || fresh.status === 403) await caches.delete(ANSWERS);
  return fresh;
}

async function marked(answer: Response): Promise<Response> {
  const headers = new Headers(answer.headers);
  headers.set(READ_AT, String(Date.now()));
  return new Response(await answer.blob(), { status: answer.status, headers });
}

function unmarked(answer: Response): Response {
  const headers = new Headers(answer.headers);
  headers.delete(READ_AT);
  return new Response(answer.body, { status: answer.status, headers });
}

async function tellPages(message: unknown): Promise<void> {
  for (const page of await worker.clients.matchAll({ type: 'window' })) page.postMessage(message);
}

async function forgetOldPieces(cache: Cache): Promise<void> {
  // In the order in which they were kept last.
  const pieces = (await cache.keys()).filter(({ url }) => KEPT_PIECES.test(new URL(url).pathname));
  await Promise.all(pieces.slice(0, -MOST_PIECES).map((request) => cache.delete(request)));
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
