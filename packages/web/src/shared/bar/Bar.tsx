import type { Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link, useLocation } from '@tanstack/react-router';
import { keptSession, sessionQuery } from '../../api/session.ts';
import type { OutboxEntry } from '../../sync/types.ts';
import { barWords as w } from '../../text/bar.ts';
import { BarIcon } from './icons.tsx';
import { type BarPlaceId, barPlaces, placeAt, placeOfRecord } from './places.ts';

interface Props {
  /** What this device has written; the place that holds what has not arrived says how much it is. */
  readonly entries: readonly OutboxEntry[];
  /** Questions that wait for an answer, for whoever has a place for them. */
  readonly questions?: number | undefined;
}

/** A phone's way about: the few places of the person's role, with what waits in each. Nobody known here: none. */
export function Bar({ entries, questions = 0 }: Props) {
  const role = useQuery(sessionQuery).data?.person?.role ?? keptSession()?.person?.role;
  const path = useLocation({ select: ({ pathname }) => pathname });
  if (!role) return null;
  const at = placeAt(role, path);
  const unsent = unsentIn(role, entries);
  return (
    <nav className="bar" aria-label={w.label}>
      {barPlaces(role).map(({ id, to }) => {
        const waits = unsent.get(id) ?? 0;
        const asked = id === 'questions' ? questions : 0;
        return (
          <Link key={id} to={to} activeOptions={{ exact: true }} aria-current={id === at ? 'page' : undefined}>
            <BarIcon place={id} />
            <span>{w.places[id]}</span>
            {waits + asked > 0 && <em aria-hidden="true">{waits + asked}</em>}
            {waits > 0 && <span className="unseen">, {w.unsent(waits)}</span>}
            {asked > 0 && <span className="unseen">, {w.open(asked)}</span>}
          </Link>
        );
      })}
    </nav>
  );
}

function unsentIn(role: Role, entries: readonly OutboxEntry[]): ReadonlyMap<BarPlaceId, number> {
  const counts = new Map<BarPlaceId, number>();
  for (const { state, revision } of entries) {
    if (state === 'acknowledged') continue;
    const place = placeOfRecord(role, revision.kind);
    counts.set(place, (counts.get(place) ?? 0) + 1);
  }
  return counts;
}
