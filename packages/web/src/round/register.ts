/** The service worker comes with the round: a desk that never walks one stays without. */
const FILE = '/service-worker.js';

export async function registerServiceWorker(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  // Where it is refused (a private window, plain http), the round works as long as the page stays open.
  await navigator.serviceWorker.register(FILE).catch(() => null);
}

/** The old version goes only when it has nothing in hand, so it is asked more than once. */
const ASK_AFTER_MS = [0, 1_000, 3_000, 9_000];

/** Lets a version that waits take over, and loads the page anew once it has; asks on only while it `may`. */
export async function takeUpdate(may: () => boolean): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration?.active) return;
  if (!registration.waiting) await registration.update().catch(() => null);
  if (!registration.waiting) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  for (const ms of ASK_AFTER_MS) {
    await new Promise((resolve) => setTimeout(resolve, ms));
    if (may()) registration.waiting?.postMessage('take-over');
  }
}
