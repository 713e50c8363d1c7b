import { type ReactNode, useState } from 'react';

/** Something behind something else, folded away until it is asked for, and not drawn before. */
export function Folded(props: { title: ReactNode; note?: string; open?: boolean; className?: string; children: ReactNode }) {
  const { title, note, className, children } = props;
  const [asked, ask] = useState(props.open ?? false);
  const drawn = asked || props.open;
  return (
    <details
      className={className ? `behind ${className}` : 'behind'}
      open={props.open}
      onToggle={(event) => event.currentTarget.open && ask(true)}
    >
      <summary>{title}</summary>
      {drawn && note && <p className="basis">{note}</p>}
      {drawn && children}
    </details>
  );
}
