import { useEffect, useSyncExternalStore } from 'react';
import { words } from '../text/index.ts';

function useMedia(query: string): boolean {
  const subscribe = (tell: () => void) => {
    const list = matchMedia(query);
    list.addEventListener('change', tell);
    return () => list.removeEventListener('change', tell);
  };
  return useSyncExternalStore(subscribe, () => matchMedia(query).matches);
}

/** Wide enough for insects across; narrower pages list them down. */
export const useWide = () => useMedia('(min-width: 900px)');

export function useTitle(title: string) {
  useEffect(() => {
    document.title = `${title} · ${words.app.name}`;
  }, [title]);
}
