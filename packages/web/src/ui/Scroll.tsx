import type { ReactNode } from 'react';

/** Something that may be wider or longer than its place: it scrolls by itself, and is reached by keyboard. */
export function Scroll({ label, className, children }: { label: string; className?: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is of a form, and a section would be one landmark too many
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <div role="group" className={className ? `scroll ${className}` : 'scroll'} aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
