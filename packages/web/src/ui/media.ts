import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';
import { flushSync } from 'react-dom';
import { words } from '../text/index.ts';

function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (tell: () => void) => {
      const list = matchMedia(query);
      list.addEventListener('change', tell);
      return () => list.removeEventListener('change', tell);
    },
    [query],
  );
  return useSyncExternalStore(subscribe, () => matchMedia(query).matches);
}

const WIDE = '(min-width: 900px)';
/** Wide enough for insects across; narrower pages list them down. */
export const useWide = () => useMedia(WIDE);
export const isWide = (): boolean => matchMedia(WIDE).matches;

/** Whether the window is at least so many pixels wide: for what is as wide as there are things to show. */
export const useRoomFor = (pixels: number) => useMedia(`(min-width: ${pixels}px)`);

export function useTitle(title: string) {
  useEffect(() => {
    document.title = `${title} · ${words.app.name}`;
  }, [title]);
}

/** Paper has no window: while something is printed all of it is drawn. */
export function useOnPaper(): boolean {
  const [paper, setPaper] = useState(false);
  useEffect(() => {
    const begin = () => flushSync(() => setPaper(true));
    const end = () => setPaper(false);
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  return paper;
}
