/** The service worker comes with the round: a desk that never walks one stays without. */
const FILE = '/service-worker.js';

export async function registerServiceWorker(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  // Where it is refused (a private window, plain http), the round works as long as the page stays open.
  await navigator.serviceWorker.register(FILE).catch(() => null);
}

/** Lets a version that waits take over, and loads the page anew once it has. */
export async function takeUpdate(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration?.active) return;
  if (!registration.waiting) await registration.update().catch(() => null);
  const waiting = registration.waiting;
  if (!waiting) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage('take-over');
}
