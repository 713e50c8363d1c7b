/** Growing delays for whoever keeps guessing. */

export interface ThrottleOptions {
  /** Attempts that are free. */
  readonly free: number;
  /** Longest delay, in seconds. */
  readonly longestS: number;
  /** Attempts are forgotten when there were none for so long, in seconds. */
  readonly memoryS: number;
}

interface Attempts {
  count: number;
  lastS: number;
  /** None is let through before. */
  notBeforeS: number;
}

/** Enough for any program's people; what was tried longest ago makes room. */
const KEYS_KEPT = 10_000;

export interface Throttle {
  /** Counts an attempt; or, when it comes too early, the seconds to wait: then it must not be made, and is not counted. */
  attempt(key: string): number | null;
  /** It succeeded: nothing is held against the key. */
  clear(key: string): void;
  /** It succeeded, but what others tried under the same key still counts. */
  undo(key: string): void;
}

/**
 * After the free attempts, each doubles the delay before the next, from one second.
 *
 * An attempt counts when it begins, so that many at once do not slip through together.
 *
 * @param nowS seconds of a clock that only runs forwards: setting the machine's clock neither frees nor locks out.
 */
export function throttle({ free, longestS, memoryS }: ThrottleOptions, nowS: () => number): Throttle {
  const known = new Map<string, Attempts>();
  return {
    attempt(key) {
      const now = nowS();
      const held = known.get(key);
      const attempts = held && now - held.lastS < memoryS ? held : { count: 0, lastS: now, notBeforeS: now };
      if (now < attempts.notBeforeS) return Math.ceil(attempts.notBeforeS - now);
      attempts.count += 1;
      attempts.lastS = now;
      attempts.notBeforeS = now + delayS(attempts.count - free);
      known.delete(key);
      known.set(key, attempts);
      if (known.size > KEYS_KEPT) known.delete(known.keys().next().value!);
      return null;
    },
    clear: (key) => void known.delete(key),
    undo(key) {
      const attempts = known.get(key);
      if (attempts) attempts.count -= 1;
    },
  };

  function delayS(beyondFree: number): number {
    return beyondFree < 0 ? 0 : Math.min(2 ** beyondFree, longestS);
  }
}
