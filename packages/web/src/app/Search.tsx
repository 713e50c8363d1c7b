import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { sessionQuery } from '../api/session.ts';
import { findWords as w } from '../text/find.ts';
import { useRoomFor } from '../ui/media.ts';
import { SearchDialog } from './SearchDialog.tsx';

/** The way into the search: a box in the masthead, and the key `/` wherever nothing is being written. */
export function Search() {
  const role = useQuery(sessionQuery).data?.person?.role;
  const [open, show] = useState(false);
  const roomy = useRoomFor(1240);
  useEffect(() => {
    const slash = (event: KeyboardEvent) => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || isWriting(event.target)) return;
      event.preventDefault();
      show(true);
    };
    document.addEventListener('keydown', slash);
    return () => document.removeEventListener('keydown', slash);
  }, []);
  if (!role) return null;
  return (
    <>
      <button type="button" className="find" aria-keyshortcuts="/" title={w.title} onClick={() => show(true)}>
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <path d="M10.5 4a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13Zm4.8 11.3L20 20" />
        </svg>
        <span className={roomy ? '' : 'unseen'}>{w.open}</span>
        {roomy && (
          <span className="find-key" aria-hidden="true">
            /
          </span>
        )}
      </button>
      {open && <SearchDialog role={role} close={() => show(false)} />}
    </>
  );
}

/** In a box, or in a sheet that lies over the page, the key means itself. */
const isWriting = (target: EventTarget | null): boolean =>
  document.querySelector('dialog[open]') !== null ||
  (target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName)));
