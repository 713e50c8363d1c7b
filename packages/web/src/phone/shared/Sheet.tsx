import { type ReactNode, useEffect, useId, useRef } from 'react';
import { roundWords as w } from '../../text/round.ts';

interface Props {
  readonly name: string;
  /** What stands under the name on the button: the state of things. */
  readonly state?: string;
  readonly marked?: boolean;
  readonly buttonClass?: string;
  readonly title: string;
  /** At once, without a tap on its button. */
  readonly open?: boolean;
  /** Without it the sheet ends with “Done”. */
  readonly foot?: (close: () => void) => ReactNode;
  readonly children: ReactNode;
}

/** A button, and the sheet that it draws up from the foot of the screen, where a thumb reaches. */
export function Sheet({ name, state, marked, buttonClass = 'extra', title, open = false, foot, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  const close = () => dialog.current?.close();
  useEffect(() => {
    if (open) dialog.current?.showModal();
  }, [open]);
  return (
    <>
      <button
        type="button"
        className={`${buttonClass}${marked ? ' is-marked' : ''}`}
        aria-haspopup="dialog"
        onClick={() => dialog.current?.showModal()}
      >
        <span>{name}</span>
        {state && <small>{state}</small>}
      </button>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: a tap beside the sheet closes it; Escape does so for the keyboard. */}
      <dialog
        ref={dialog}
        className="sheet"
        aria-labelledby={heading}
        onClick={(event) => event.target === dialog.current && close()}
      >
        <div className="sheet-body">
          <h2 id={heading}>{title}</h2>
          {children}
          {foot ? (
            foot(close)
          ) : (
            <button type="button" className="big primary" onClick={close}>
              {w.sheet.done}
            </button>
          )}
        </div>
      </dialog>
    </>
  );
}
