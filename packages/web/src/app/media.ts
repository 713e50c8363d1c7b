import { useEffect, useSyncExternalStore } from 'react';
import { words } from '../words/index.ts';

export function useMedia(query: string): boolean {
  const subscribe = (tell: () => void) => {
    const list = matchMedia(query);
    list.addEventListener('change', tell);
    return () => list.removeEventListener('change', tell);
  };
  return useSyncExternalStore(subscribe, () => matchMedia(query).matches);
}

export function useTitle(title: string) {
  useEffect(() => {
    document.title = `${title} · ${words.app.name}`;
  }, [title]);
}
