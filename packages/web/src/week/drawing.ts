import { useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far above and below the window things are drawn, so that they are there before they are seen. */
const MARGIN = '450px 0px';

interface Piece {
  drawn: boolean;
  readonly draw: (drawn: boolean) => void;
}

/**
 * Draws what comes near the window and takes away what has left it, a piece of either a frame and the nearest first:
 * however fast somebody scrolls, no frame has more to do than that, and the page never grows heavy.
 */
class Drawing {
  readonly #pieces = new Map<Element, Piece>();
  /** Near and not drawn. */
  readonly #come = new Set<Element>();
  /** Drawn and no longer near. */
  readonly #gone = new Set<Element>();
  readonly #observer = new IntersectionObserver((entries) => this.#seen(entries), { rootMargin: MARGIN });
  #booked = false;

  constructor() {
    // Paper has no window.
    addEventListener('beforeprint', () => flushSync(() => this.#drawAll()));
  }

  /** @returns takes the piece out again */
  add(element: Element, piece: Piece): () => void {
    this.#pieces.set(element, piece);
    this.#observer.observe(element);
    return () => {
      this.#observer.unobserve(element);
      for (const kept of [this.#pieces, this.#come, this.#gone]) kept.delete(element);
    };
  }

  #seen(entries: readonly IntersectionObserverEntry[]) {
    for (const { target, isIntersecting } of entries) {
      const drawn = this.#pieces.get(target)?.drawn;
      this.#come.delete(target);
      this.#gone.delete(target);
      if (isIntersecting && drawn === false) this.#come.add(target);
      if (!isIntersecting && drawn === true) this.#gone.add(target);
    }
    this.#book();
  }

  #book() {
    if (this.#booked || this.#come.size + this.#gone.size === 0) return;
    this.#booked = true;
    // After one frame and before the next, so that neither the drawing nor the frame that lays it out is long.
    requestAnimationFrame(() => setTimeout(() => this.#step()));
  }

  #step() {
    this.#booked = false;
    const next = this.#nearest();
    const [last] = this.#gone;
    flushSync(() => {
      if (next) this.#set(next, true);
      // What holds the focus stays, until it comes and goes again.
      if (last) this.#set(last, last.contains(document.activeElement));
    });
    this.#book();
  }

  #nearest(): Element | undefined {
    const middle = innerHeight / 2;
    let nearest: { readonly element: Element; readonly away: number } | undefined;
    for (const element of this.#come) {
      const { top, bottom } = element.getBoundingClientRect();
      const away = Math.max(top - middle, middle - bottom, 0);
      if (!nearest || away < nearest.away) nearest = { element, away };
    }
    return nearest?.element;
  }

  #drawAll() {
    for (const element of this.#pieces.keys()) this.#set(element, true);
  }

  #set(element: Element, drawn: boolean) {
    const piece = this.#pieces.get(element);
    this.#come.delete(element);
    this.#gone.delete(element);
    if (!piece || piece.drawn === drawn) return;
    piece.drawn = drawn;
    piece.draw(drawn);
  }
}

let shared: Drawing | null = null;

/**
 * Whether a piece of a long page is drawn, and how high it was when it last was (px, null: never): its element, drawn or
 * not, holds its place.
 */
export function useDrawn<T extends HTMLElement>(always: boolean) {
  const ref = useRef<T>(null);
  const [drawn, setDrawn] = useState(always);
  const [height, setHeight] = useState<number | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (always || !element) return;
    shared ??= new Drawing();
    const draw = (next: boolean) => {
      if (!next) setHeight(element.getBoundingClientRect().height);
      setDrawn(next);
    };
    return shared.add(element, { drawn: false, draw });
  }, [always]);
  return { ref, drawn: always || drawn, height };
}
