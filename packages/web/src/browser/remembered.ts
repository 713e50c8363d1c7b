/** A choice that outlives the visit; where storage is closed to us, it lasts as long as the page. */
export function remembered<T extends string>(key: string, allowed: readonly T[], otherwise: () => T) {
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
