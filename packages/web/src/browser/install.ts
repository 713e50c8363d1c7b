/** Whether and how this browser puts the app on a phone's home screen. */
import { useSyncExternalStore } from 'react';

export type PhoneKind = 'iphone' | 'android-chrome' | 'android-firefox' | 'android-samsung' | 'other';

/** By what the browser says of itself: a phone whose browser says otherwise is told of the menu. */
export function phoneKind(userAgent: string): PhoneKind {
  if (/iPhone|iPad|iPod/.test(userAgent)) return 'iphone';
  if (!/Android/.test(userAgent)) return 'other';
  if (/SamsungBrowser/.test(userAgent)) return 'android-samsung';
  if (/Firefox/.test(userAgent)) return 'android-firefox';
  return /Chrome/.test(userAgent) ? 'android-chrome' : 'other';
}

/** Opened from its own icon rather than in a browser's window. */
export const isOnHomeScreen = (): boolean => matchMedia('(display-mode: standalone)').matches;

/** What Chromium hands a page that it would install. */
interface InstallPrompt extends Event {
  prompt(): Promise<unknown>;
}

let held: InstallPrompt | null = null;
const listeners = new Set<() => void>();
const hold = (prompt: InstallPrompt | null) => {
  held = prompt;
  for (const tell of listeners) tell();
};
globalThis.addEventListener?.('beforeinstallprompt', (event) => {
  event.preventDefault();
  hold(event as InstallPrompt);
});
globalThis.addEventListener?.('appinstalled', () => hold(null));

/** Asks the browser to install the app; null where it has not offered to. */
export function useInstall(): (() => void) | null {
  const prompt = useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => void listeners.delete(tell);
    },
    () => held,
  );
  return prompt && (() => void prompt.prompt().then(() => hold(null)));
}
