import type { Role, SearchView } from '@duskwatch/core';
import { keepPreviousData, queryOptions, useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { getJson } from '../api/client.ts';
import { findWords as w } from '../text/find.ts';
import { type Line, lineOf, pageLines } from './find-lines.ts';

const LONGEST = 100;
/** Between the last key and the question to the server. */
const PAUSE_MS = 120;

const searchQuery = (typed: string) =>
  queryOptions({
    queryKey: ['search', typed],
    queryFn: ({ signal }) => getJson<SearchView>(`/api/search?q=${encodeURIComponent(typed)}`, signal),
    placeholderData: keepPreviousData,
    retry: false,
  });

/** A box and a list: arrow keys walk the list while the box keeps the focus, Enter goes there, Escape closes. */
export function SearchDialog({ role, close }: { role: Role; close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const navigate = useNavigate();
  const id = useId();
  const [typed, type] = useState('');
  const asked = useSettled(typed.trim(), PAUSE_MS);
  const search = useQuery({ ...searchQuery(asked), enabled: asked !== '' && role !== 'reader' });
  /** By its key, so that it stays what it was while others come and go around it; else the first. */
  const [chosen, choose] = useState<string | null>(null);
  // Enter pressed before the answer is here waits for it, so that nobody lands where the list of before led.
  const [wanted, want] = useState(false);
  const settled =
    asked === typed.trim() && (asked === '' || role === 'reader' || (!search.isFetching && !search.isPlaceholderData));
  const hits = typed.trim() === '' ? [] : (search.data?.hits ?? []).map(lineOf);
  const lines = [...hits, ...pageLines(role, typed)];
  const at = Math.max(
    0,
    lines.findIndex(({ key }) => key === chosen),
  );
  const line = lines[at];
  const more = typed.trim() === '' ? 0 : (search.data?.of ?? 0) - hits.length;

  // Before the next key comes, which is meant for the box already.
  useLayoutEffect(() => {
    const opened = dialog.current;
    const before = document.activeElement;
    opened?.showModal();
    return () => {
      opened?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  const go = (to: Line) => {
    close();
    void navigate(to.link);
  };
  useEffect(() => {
    if (!wanted || !settled) return;
    want(false);
    if (line) go(line);
  });

  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step) {
      event.preventDefault();
      choose(lines[(at + step + lines.length) % Math.max(lines.length, 1)]?.key ?? null);
    }
    if (event.key === 'Enter') {
      event.preventDefault();
      want(true);
    }
    event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes it by key
    <dialog
      ref={dialog}
      className="search"
      aria-label={w.title}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClick={({ target }) => {
        if (target === dialog.current) close();
      }}
    >
      <input
        type="text"
        role="combobox"
        aria-label={w.label}
        aria-expanded={lines.length > 0}
        aria-controls={`${id}-list`}
        aria-activedescendant={line && `${id}-${line.key}`}
        aria-autocomplete="list"
        autoComplete="off"
        spellCheck={false}
        maxLength={LONGEST}
        placeholder={w.hint}
        value={typed}
        onChange={(event) => {
          type(event.currentTarget.value);
          choose(null);
          want(false);
        }}
        onKeyDown={onKeyDown}
      />
      <div role="listbox" id={`${id}-list`} aria-label={w.title} className="search-list" tabIndex={-1}>
        {lines.map((each, index) => (
          <div key={each.key}>
            {lines[index - 1]?.kind !== each.kind && (
              <p className="search-kind" aria-hidden="true">
                {w.kinds[each.kind]}
              </p>
            )}
            {/* biome-ignore lint/a11y/useKeyWithClickEvents: the box has the keys */}
            <div
              role="option"
              id={`${id}-${each.key}`}
              aria-selected={each === line}
              tabIndex={-1}
              className="search-line"
              ref={each === line ? intoView : undefined}
              onClick={() => go(each)}
            >
              <span>{each.name}</span> <small>{each.about}</small>
            </div>
          </div>
        ))}
      </div>
      <p className="search-said" role="status">
        {saying()}
      </p>
    </dialog>
  );

  function saying(): string {
    if (typed.trim() === '') return w.start;
    if (search.error) return w.offline;
    if (!settled) return ' ';
    if (lines.length === 0) return w.none;
    return more > 0 ? w.more(more) : w.found(lines.length);
  }
}

const intoView = (element: HTMLElement | null) => element?.scrollIntoView({ block: 'nearest' });

/** A value once it has stood still. */
function useSettled<T>(value: T, pauseMs: number): T {
  const [settled, settle] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => settle(value), pauseMs);
    return () => clearTimeout(timer);
  }, [value, pauseMs]);
  return settled;
}
