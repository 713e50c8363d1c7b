import type { ReactNode } from 'react';

/** A table that may be wider than the page: it scrolls by itself, and is reached by keyboard. */
export function Scroll({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="season-scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
