import { useQuery } from '@tanstack/react-query';
import { Link, useLocation } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import { sessionQuery } from '../api/session.ts';
import { OtherProgramButton, useOtherProgram } from '../shared/OtherProgram.tsx';
import { pagesWords as w } from '../text/pages.ts';
import { placeOf, programPagesFor } from './places.ts';

/** The way to the other program, where this machine has one. */
function OtherProgramItem() {
  const other = useOtherProgram();
  return other && <OtherProgramButton kind={other} className="menu-item" />;
}

/** What concerns the program and not the season: a list that opens from the masthead. Escape closes it, and so does leaving it. */
export function ProgramMenu() {
  const role = useQuery(sessionQuery).data?.person?.role;
  const at = useLocation({ select: ({ pathname }) => placeOf(pathname) });
  const [open, show] = useState(false);
  const whole = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (!open) return;
    const left = ({ target }: Event) => {
      if (!whole.current?.contains(target as Node)) show(false);
    };
    const closeByKey = ({ key }: KeyboardEvent) => {
      if (key !== 'Escape') return;
      show(false);
      button.current?.focus();
    };
    document.addEventListener('pointerdown', left);
    document.addEventListener('focusin', left);
    document.addEventListener('keydown', closeByKey);
    return () => {
      document.removeEventListener('pointerdown', left);
      document.removeEventListener('focusin', left);
      document.removeEventListener('keydown', closeByKey);
    };
  }, [open]);
  if (!role) return null;
  return (
    <div className="program-menu" ref={whole}>
      <button
        ref={button}
        type="button"
        className="menu-button"
        aria-expanded={open}
        aria-controls="program-pages"
        aria-current={at === 'program' ? 'true' : undefined}
        onClick={() => show(!open)}
      >
        {w.program}
      </button>
      <nav id="program-pages" className="program-pages" aria-label={w.program} hidden={!open}>
        {programPagesFor(role).map(({ id, to }) => (
          <Link key={id} to={to} activeOptions={{ exact: true, includeSearch: false }} onClick={() => show(false)}>
            {w.programPages[id]}
          </Link>
        ))}
        {open && <OtherProgramItem />}
      </nav>
    </div>
  );
}
