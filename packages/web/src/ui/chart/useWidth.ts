import { useLayoutEffect, useRef, useState } from 'react';

/** Width in CSS pixels of the element the ref is on: charts are drawn at true size, so that text and lines keep theirs. */
export function useWidth<E extends Element>(): [React.RefObject<E | null>, number] {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = () => setWidth(Math.floor(element.getBoundingClientRect().width));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
