/** Which answers the service worker keeps for this device. */
import { READ_AT } from './read-at.ts';

/** As the worker names it. */
const CACHE = 'duskwatch-answers';

export interface KeptAnswer {
  readonly path: string;
  /** When it was read, in ms since 1970. */
  readonly readMs: number;
}

/** None where the browser keeps nothing. */
export async function keptAnswers(): Promise<readonly KeptAnswer[]> {
  try {
    const cache = await caches.open(CACHE);
    const requests = await cache.keys();
    const answers = await Promise.all(requests.map((request) => cache.match(request, { ignoreVary: true })));
    return requests.flatMap(({ url }, index) => {
      const readMs = Number(answers[index]?.headers.get(READ_AT));
      return readMs > 0 ? [{ path: new URL(url).pathname, readMs }] : [];
    });
  } catch {
    return [];
  }
}
