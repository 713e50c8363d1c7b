import * as Dropdown from '@radix-ui/react-dropdown-menu';
import { type ReactNode, useState } from 'react';

export interface MenuItem {
  readonly text: string;
  readonly act: () => void;
}

/** A button that opens a list of acts: arrow keys walk it, Escape closes it, and the focus comes back to the button. */
export function Menu(props: { text: ReactNode; label?: string; items: readonly MenuItem[]; className?: string }) {
  const { text, label, items, className = 'plain-button' } = props;
  // A sheet over the page lies above everything that is not in it.
  const [sheet, setSheet] = useState<HTMLElement | null>(null);
  return (
    <Dropdown.Root modal={false}>
      <Dropdown.Trigger
        type="button"
        className={`menu-button ${className}`}
        aria-label={label}
        ref={(button) => setSheet(button?.closest('dialog') ?? null)}
      >
        {text}
      </Dropdown.Trigger>
      <Dropdown.Portal container={sheet}>
        <Dropdown.Content className="menu" align="start" sideOffset={4} collisionPadding={8}>
          {items.map((item) => (
            <Dropdown.Item key={item.text} className="menu-item" onSelect={item.act}>
              {item.text}
            </Dropdown.Item>
          ))}
        </Dropdown.Content>
      </Dropdown.Portal>
    </Dropdown.Root>
  );
}
