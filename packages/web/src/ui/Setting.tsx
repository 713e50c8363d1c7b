import type { ReactNode } from 'react';

/** Holds the line of what is still on its way. */
export const NOT_YET = '\u00a0';

export function Setting({ title, note, children }: { title: string; note?: string; children: ReactNode }) {
  return (
    <section className="setting">
      <h2>{title}</h2>
      <div>
        {children}
        {note && <p className="key">{note}</p>}
      </div>
    </section>
  );
}
