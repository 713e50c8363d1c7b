import type { Person, Role } from '@duskwatch/core';
import { useQueryClient } from '@tanstack/react-query';
import { ApiError, send } from '../../api/client.ts';
import { serverFaults } from '../../shared/faults.ts';
import { peopleWords } from '../../text/people.ts';
import { toast } from '../../ui/toast.ts';
import { invitationsQuery, type MadeInvitation, peopleQuery } from './queries.ts';

export type Change = Partial<Pick<Person, 'role' | 'farms' | 'disabled'>>;

/** Changes somebody at once on the page, then on the server; says what was done, with the way back. */
export function useChange(): (person: Person, change: Change) => Promise<void> {
  const queries = useQueryClient();
  const w = peopleWords.people;
  const apply = async (before: Person, change: Change, told: string, back: Change | null) => {
    const held = queries.getQueryData(peopleQuery.queryKey);
    const after = { ...before, ...change };
    queries.setQueryData(peopleQuery.queryKey, (people) => people?.map((each) => (each.id === before.id ? after : each)));
    try {
      await send('PATCH', `/api/people/${encodeURIComponent(before.id)}`, change);
      toast(told, back ? { action: { label: w.undo, act: () => void apply(after, back, said(before, back), null) } } : {});
    } catch (error) {
      queries.setQueryData(peopleQuery.queryKey, held);
      toast(w.failed(whyNot(error)), { lasting: true });
    }
    void queries.invalidateQueries({ queryKey: peopleQuery.queryKey });
  };
  return (person, change) => apply(person, change, said(person, change), reversed(person, change));
}

/** The change that takes another back. */
function reversed(person: Person, change: Change): Change {
  if (change.disabled !== undefined) return { disabled: person.disabled };
  if (change.role === undefined) return { farms: person.farms };
  return person.role === 'grower' ? { role: person.role, farms: person.farms } : { role: person.role };
}

function said({ name }: Person, { role, farms, disabled }: Change): string {
  const w = peopleWords.people.changed;
  if (disabled !== undefined) return disabled ? w.disabled(name) : w.enabled(name);
  return role === undefined ? w.farms(name, (farms ?? []).join(', ')) : w.role(name, peopleWords.roles[role].name);
}

function whyNot(error: unknown): string {
  if (error instanceof ApiError && error.status === 409) return peopleWords.faults.lastCoordinator;
  return serverFaults(error, {}).form ?? peopleWords.faults.unreachable;
}

type Grant = { readonly role: Role; readonly farms: readonly string[] } | { readonly personId: string };

/** Makes a link; null when that failed, which it says. */
export function useInvite(): (grant: Grant) => Promise<MadeInvitation | null> {
  const queries = useQueryClient();
  return async (grant) => {
    try {
      const made = await send<MadeInvitation>('POST', '/api/invitations', grant);
      void queries.invalidateQueries({ queryKey: invitationsQuery.queryKey });
      void queries.invalidateQueries({ queryKey: peopleQuery.queryKey });
      return made;
    } catch (error) {
      toast(peopleWords.people.failed(whyNot(error)), { lasting: true });
      return null;
    }
  };
}
