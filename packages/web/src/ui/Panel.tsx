import { type ReactNode, useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';
import { recordWords } from '../text/record.ts';

/**
 * A sheet over the page: the browser keeps the focus in it, Escape closes it, and the focus goes back to where it came
 * from.
 */
export function Panel({ title, close, children }: { title: string; close: () => void; children: ReactNode }) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  // Out of the table or list that opened it, and of how that looks.
  return createPortal(
    <dialog
      ref={ref}
      className="panel"
      aria-label={title}
      // The page behind must not take a key meant for the sheet.
      onKeyDown={(event) => event.stopPropagation()}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      <div className="panel-head">
        <h2>{title}</h2>
        <button type="button" className="plain-button" onClick={close}>
          {recordWords.close}
        </button>
      </div>
      {children}
    </dialog>,
    document.body,
  );
}
