import type { ReactNode } from 'react';
import { recordWords } from '../../text/record.ts';

/** The end of a form: save, or leave it; and what is to be mended first. */
export function FormFoot(props: { save: string; close: () => void; status: ReactNode; busy?: boolean }) {
  return (
    <footer className="record-foot">
      <button type="submit" className="button primary" aria-disabled={props.busy}>
        {props.save}
      </button>
      <button type="button" className="plain-button" onClick={props.close}>
        {recordWords.cancel}
      </button>
      <p role="status">{props.status}</p>
    </footer>
  );
}
