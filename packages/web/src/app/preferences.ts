import type { TemperatureUnit } from '@duskwatch/core';
import { useSyncExternalStore } from 'react';

export type Theme = 'light' | 'dark';

/** A choice that outlives the visit; where storage is closed to us, it lasts as long as the page. */
function remembered<T extends string>(key: string, allowed: readonly T[], otherwise: () => T) {
  const listeners = new Set<() => void>();
  let current: T | null = null;
  const read = (): T => {
    if (current !== null) return current;
    try {
      const stored = localStorage.getItem(key);
      current = allowed.find((value) => value === stored) ?? null;
    } catch {}
    return current ?? otherwise();
  };
  return {
    read,
    choose(value: T) {
      current = value;
      try {
        localStorage.setItem(key, value);
      } catch {}
      for (const tell of listeners) tell();
    },
    subscribe(tell: () => void) {
      listeners.add(tell);
      return () => void listeners.delete(tell);
    },
  };
}

const darkScheme = () => matchMedia('(prefers-color-scheme: dark)');
const theme = remembered<Theme>('duskwatch.theme', ['light', 'dark'], () => (darkScheme().matches ? 'dark' : 'light'));
const unit = remembered<TemperatureUnit>('duskwatch.temperature', ['F', 'C'], () =>
  navigator.language === 'en-US' || navigator.language === 'en' ? 'F' : 'C',
);

export function useTheme(): [Theme, (value: Theme) => void] {
  const subscribe = (tell: () => void) => {
    const stop = theme.subscribe(tell);
    const scheme = darkScheme();
    scheme.addEventListener('change', tell);
    return () => {
      stop();
      scheme.removeEventListener('change', tell);
    };
  };
  const choose = (value: Theme) => {
    document.documentElement.dataset.theme = value;
    theme.choose(value);
  };
  return [useSyncExternalStore(subscribe, theme.read), choose];
}

/** The unit that heat is shown in, whatever unit a model was published in. */
export function useTemperatureUnit(): [TemperatureUnit, (value: TemperatureUnit) => void] {
  return [useSyncExternalStore(unit.subscribe, unit.read), unit.choose];
}
