import { startTransition, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far above and below the window things are drawn, so that they are there before they are seen. */
const MARGIN = '600px 0px';

/**
 * Whether an element is in the window or close to it, and how high it was when it was last drawn (px, null: never).
 * Paper has no window: for printing everything is near. What holds the focus stays.
 */
export function useNear<T extends HTMLElement>(always: boolean) {
  const ref = useRef<T>(null);
  const [near, setNear] = useState(always);
  const [height, setHeight] = useState<number | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (always || !element) return;
    const observer = new IntersectionObserver(
      ([entry]) => {
        const { isIntersecting, boundingClientRect } = entry!;
        if (!isIntersecting && element.contains(document.activeElement)) return;
        // In pieces that let scrolling through: none of this is seen yet.
        startTransition(() => {
          if (!isIntersecting && boundingClientRect.height > 0) setHeight(boundingClientRect.height);
          setNear(isIntersecting);
        });
      },
      { rootMargin: MARGIN },
    );
    observer.observe(element);
    const forPaper = () => flushSync(() => setNear(true));
    addEventListener('beforeprint', forPaper);
    return () => {
      observer.disconnect();
      removeEventListener('beforeprint', forPaper);
    };
  }, [always]);
  return { ref, near: always || near, height };
}
