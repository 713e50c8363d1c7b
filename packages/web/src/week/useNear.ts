import { useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far above and below the window things are drawn, so that they are there before they are seen. */
const MARGIN = '600px 0px';

type Seen = (entry: IntersectionObserverEntry) => void;

const watched = new WeakMap<Element, Seen>();
let observer: IntersectionObserver | null = null;

/** One observer for all, which the browser asks once for each frame. */
function watch(element: Element, seen: Seen): () => void {
  observer ??= new IntersectionObserver(
    (entries) => {
      for (const entry of entries) watched.get(entry.target)?.(entry);
    },
    { rootMargin: MARGIN },
  );
  watched.set(element, seen);
  observer.observe(element);
  return () => {
    observer?.unobserve(element);
    waiting.delete(element);
  };
}

const waiting = new Map<Element, () => void>();
let called = false;

/** Ms of a frame; the browser still has to lay out and paint what was drawn in them. */
const A_FRAMES_SHARE = 6;

/** Few changes to a frame, the newest first: all at once they would hold up the scrolling that asks for them. */
function inTurn(element: Element, change: () => void): void {
  waiting.delete(element);
  waiting.set(element, change);
  if (!called) requestAnimationFrame(next);
  called = true;
}

function next(): void {
  const until = performance.now() + A_FRAMES_SHARE;
  for (const [element, change] of [...waiting].reverse()) {
    waiting.delete(element);
    flushSync(change);
    if (performance.now() > until) break;
  }
  called = waiting.size > 0;
  if (called) requestAnimationFrame(next);
}

/**
 * Whether an element is in the window or close to it, and how high it was when it was last drawn (px, null: never).
 * Paper has no window: for printing everything is near. What holds the focus stays.
 */
export function useNear<T extends HTMLElement>(always: boolean) {
  const ref = useRef<T>(null);
  const [near, setNear] = useState(always);
  const [height, setHeight] = useState<number | null>(null);
  const drawn = useRef(always);
  useEffect(() => {
    const element = ref.current;
    if (always || !element) return;
    const stop = watch(element, ({ isIntersecting, boundingClientRect }) => {
      if (!isIntersecting && element.contains(document.activeElement)) return;
      // Already so: what waited to make it otherwise need not.
      if (isIntersecting === drawn.current) return void waiting.delete(element);
      inTurn(element, () => {
        drawn.current = isIntersecting;
        if (!isIntersecting && boundingClientRect.height > 0) setHeight(boundingClientRect.height);
        setNear(isIntersecting);
      });
    });
    const forPaper = () => {
      waiting.delete(element);
      drawn.current = true;
      flushSync(() => setNear(true));
    };
    addEventListener('beforeprint', forPaper);
    return () => {
      stop();
      removeEventListener('beforeprint', forPaper);
    };
  }, [always]);
  return { ref, near: always || near, height };
}
