import type { ReactNode } from 'react';

/** A table that may be wider than the page: it scrolls by itself, and is reached by keyboard. */
export function Scroll({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is of a form, and a section would be one landmark too many
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <div role="group" className="season-scroll" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
