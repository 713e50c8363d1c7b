/** What to do when a part of the app does not come: the server has a newer version by now, or there is no signal. */

const KEY = 'duskwatch.renewed';
/** A second failure soon after is not for want of a newer page. */
const SOON_MS = 30_000;

/** As Chromium, Firefox and Safari say it, and Vite for a style sheet. */
const NO_PART = /dynamically imported module|Importing a module script failed|Unable to preload/i;

export const isMissingPart = (error: unknown): boolean => error instanceof Error && NO_PART.test(error.message);

/** Loads the page anew, once, when a part of it is missing while there is a network: the new page knows its own parts. */
export function renewWhenPartsAreMissing(): void {
  addEventListener('vite:preloadError', () => {
    if (!navigator.onLine) return;
    try {
      const last = Number(sessionStorage.getItem(KEY) ?? 0);
      if (Date.now() - last < SOON_MS) return;
      sessionStorage.setItem(KEY, String(Date.now()));
    } catch {
      return;
    }
    location.reload();
  });
}
