/** The service worker comes with the round: a desk that never walks one stays without. */
const FILE = '/service-worker.js';

const possible = () => import.meta.env.PROD && 'serviceWorker' in navigator;

export async function registerServiceWorker(): Promise<void> {
  if (!possible()) return;
  // Where it is refused (a private window, plain http), the round works as long as the page stays open.
  await navigator.serviceWorker.register(FILE).catch(() => null);
}

/**
 * The old version goes only when it has nothing in hand, and Chromium hears only the first asking: a file asked for in
 * that moment keeps the old one for as long as it is used. So the page is let come to rest before.
 */
const REST_MS = 1_500;
/** Where it was not heard, it is asked again, each time after twice as long. */
const LONGER = 2;

/**
 * Lets a newer version take over as soon as there is one, and loads the page anew once it has. It is looked for now, and
 * whenever the app is taken up again: a phone may keep it open for weeks.
 *
 * @param may whether nothing is under way, on this page or another one
 * @returns stops it
 */
export function takeUpdates(may: () => Promise<boolean>): () => void {
  if (!possible()) return () => undefined;
  const { serviceWorker } = navigator;
  const stopped = new AbortController();
  const { signal } = stopped;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const ask = (registration: ServiceWorkerRegistration, waitMs: number) => {
    clearTimeout(timer);
    if (signal.aborted || !registration.waiting) return;
    timer = setTimeout(async () => {
      if (!(await may()) || signal.aborted) return;
      registration.waiting?.postMessage('take-over');
      ask(registration, waitMs * LONGER);
    }, waitMs);
  };
  const follow = (registration: ServiceWorkerRegistration) => {
    const soon = () => ask(registration, REST_MS);
    registration.installing?.addEventListener('statechange', soon, { signal });
    soon();
  };
  const watch = async () => {
    const registration = await serviceWorker.getRegistration();
    if (!registration?.active || signal.aborted) return;
    const look = () => void registration.update().catch(() => null);
    registration.addEventListener('updatefound', () => follow(registration), { signal });
    document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && look(), { signal });
    follow(registration);
    look();
  };

  serviceWorker.addEventListener('controllerchange', () => void may().then((yes) => yes && location.reload()), { signal });
  void watch();
  return () => {
    clearTimeout(timer);
    stopped.abort();
  };
}
