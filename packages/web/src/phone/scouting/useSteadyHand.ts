import { useRef } from 'react';

/** A glove that touches twice means once. */
const AGAIN_MS = 250;

/** Runs what a touch means, unless another came less than a quarter of a second before. */
export function useSteadyHand(): (act: () => void) => void {
  const last = useRef(Number.NEGATIVE_INFINITY);
  return (act) => {
    const now = performance.now();
    const again = now - last.current < AGAIN_MS;
    last.current = now;
    if (!again) act();
  };
}
