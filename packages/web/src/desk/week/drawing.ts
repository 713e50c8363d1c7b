import { useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far above and below the window things are drawn, so that they are there before they are seen. */
const MARGIN = '250px 0px';

/** How much of a piece stands on the page: only its place, its words, or its pictures too. */
type Extent = 'place' | 'words' | 'all';

interface Piece {
  extent: Extent;
  readonly draw: (extent: Extent) => void;
}

/**
 * Draws what comes near the window and takes away what has left it, a piece of either a frame and the nearest first:
 * however fast somebody scrolls, no frame has more to do than that, and the page never grows heavy. Words go before
 * pictures, which come when there is nothing to read that is not there yet.
 */
class Drawing {
  readonly #pieces = new Map<Element, Piece>();
  /** Near and not drawn. */
  readonly #come = new Set<Element>();
  /** Near and without pictures. */
  readonly #plain = new Set<Element>();
  /** Drawn and no longer near. */
  readonly #gone = new Set<Element>();
  readonly #observer = new IntersectionObserver((entries) => this.#seen(entries), { rootMargin: MARGIN });
  #booked = false;

  /** @returns takes the piece out again */
  add(element: Element, piece: Piece): () => void {
    this.#pieces.set(element, piece);
    this.#observer.observe(element);
    return () => {
      this.#observer.unobserve(element);
      this.#pieces.delete(element);
      this.#unqueue(element);
    };
  }

  #unqueue(element: Element) {
    for (const queue of [this.#come, this.#plain, this.#gone]) queue.delete(element);
  }

  #seen(entries: readonly IntersectionObserverEntry[]) {
    for (const { target, isIntersecting } of entries) {
      const extent = this.#pieces.get(target)?.extent;
      this.#unqueue(target);
      if (extent === undefined) continue;
      if (!isIntersecting && extent !== 'place') this.#gone.add(target);
      if (isIntersecting && extent === 'place') this.#come.add(target);
      if (isIntersecting && extent === 'words') this.#plain.add(target);
    }
    this.#book();
  }

  #book() {
    if (this.#booked || this.#come.size + this.#plain.size + this.#gone.size === 0) return;
    this.#booked = true;
    // After one frame and before the next, so that neither the drawing nor the frame that lays it out is long.
    requestAnimationFrame(() => setTimeout(() => this.#step()));
  }

  #step() {
    this.#booked = false;
    const next = nearest(this.#come);
    const plain = next ? undefined : nearest(this.#plain);
    const [last] = this.#gone;
    flushSync(() => {
      if (next) this.#set(next, 'words');
      if (plain) this.#set(plain, 'all');
      // What holds the focus stays, until it comes and goes again.
      if (last?.contains(document.activeElement)) this.#gone.delete(last);
      else if (last) this.#set(last, 'place');
    });
    this.#book();
  }

  #set(element: Element, extent: Extent) {
    const piece = this.#pieces.get(element);
    this.#unqueue(element);
    if (!piece || piece.extent === extent) return;
    if (extent === 'words') this.#plain.add(element);
    piece.extent = extent;
    piece.draw(extent);
  }
}

/** The one that is nearest to the middle of the window. */
function nearest(elements: Iterable<Element>): Element | undefined {
  const middle = innerHeight / 2;
  let best: { readonly element: Element; readonly away: number } | undefined;
  for (const element of elements) {
    const { top, bottom } = element.getBoundingClientRect();
    const away = Math.max(top - middle, middle - bottom, 0);
    if (!best || away < best.away) best = { element, away };
  }
  return best?.element;
}

let shared: Drawing | null = null;

/**
 * How much of a piece of a long page is drawn, and how high it was when it last was (px, null: never): its element,
 * drawn or not, holds its place.
 */
export function useDrawn<T extends HTMLElement>(always: boolean) {
  const ref = useRef<T>(null);
  const [extent, setExtent] = useState<Extent>(always ? 'all' : 'place');
  const [height, setHeight] = useState<number | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (always || !element) return;
    shared ??= new Drawing();
    const draw = (next: Extent) => {
      if (next === 'place') setHeight(element.getBoundingClientRect().height);
      setExtent(next);
    };
    return shared.add(element, { extent: 'place', draw });
  }, [always]);
  return { ref, drawn: always || extent !== 'place', pictures: always || extent === 'all', height };
}
