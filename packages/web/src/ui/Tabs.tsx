import * as Radix from '@radix-ui/react-tabs';
import type { ReactElement, ReactNode } from 'react';

export interface Tab<T extends string> {
  readonly id: T;
  /** A link to the part, so that it can be sent and opened beside. */
  readonly link: ReactElement;
}

/** The parts of a page, one at a time: arrow keys walk the tabs, and the part comes with its tab. */
export function Tabs<T extends string>(props: {
  label: string;
  tabs: readonly Tab<T>[];
  at: T;
  choose: (id: T) => void;
  children: ReactNode;
}) {
  const { label, tabs, at, choose, children } = props;
  return (
    <Radix.Root value={at} onValueChange={(id) => choose(tabs.find((tab) => tab.id === id)?.id ?? at)}>
      <Radix.List className="tabs no-print" aria-label={label}>
        {tabs.map(({ id, link }) => (
          <Radix.Trigger key={id} value={id} asChild>
            {link}
          </Radix.Trigger>
        ))}
      </Radix.List>
      <Radix.Content value={at} className="tab-panel">
        {children}
      </Radix.Content>
    </Radix.Root>
  );
}
