import type { CSSProperties, ReactNode } from 'react';

/** A table whose rows draw themselves. Every other is a {@link Table}. */
export function BareTable(props: { caption: string; className: string; style?: CSSProperties; children: ReactNode }) {
  return (
    <table className={props.className} style={props.style}>
      <caption className="unseen">{props.caption}</caption>
      {props.children}
    </table>
  );
}
