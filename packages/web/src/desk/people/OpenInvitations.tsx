import { useQuery, useQueryClient } from '@tanstack/react-query';
import { ApiError, send } from '../../api/client.ts';
import { dayText } from '../../format/day.ts';
import { localDay } from '../../format/local-day.ts';
import { peopleWords } from '../../text/people.ts';
import { toast } from '../../ui/toast.ts';
import { type Invitation, invitationsQuery, peopleQuery } from './queries.ts';

/** Links that still work, each with a way to end it. */
export function OpenInvitations() {
  const w = peopleWords.open;
  const queries = useQueryClient();
  const { data: invitations = [] } = useQuery(invitationsQuery);
  const withdraw = async ({ id }: Invitation) => {
    try {
      await send('DELETE', `/api/invitations/${encodeURIComponent(id)}`);
      toast(w.withdrawn);
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      toast(peopleWords.people.failed(error.kind === 'unreachable' ? peopleWords.faults.unreachable : error.message));
    }
    void queries.invalidateQueries({ queryKey: invitationsQuery.queryKey });
    void queries.invalidateQueries({ queryKey: peopleQuery.queryKey });
  };
  return (
    <section className="open-invitations" aria-labelledby="open-title">
      <h2 id="open-title">{w.title}</h2>
      {invitations.length === 0 && <p className="faint">{w.none}</p>}
      <ul>
        {invitations.map((invitation) => (
          <li key={invitation.id}>
            <span>
              <b>{whatFor(invitation)}</b>
              {invitation.farms.length > 0 && `, ${invitation.farms.join(', ')}`}
              <span className="faint">{w.by(invitation.createdBy, dayText(localDay(invitation.expiresAt)))}</span>
            </span>
            <button
              type="button"
              className="plain-button"
              aria-label={w.withdrawOf(whatFor(invitation))}
              onClick={() => withdraw(invitation)}
            >
              {w.withdraw}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

const whatFor = ({ person, role }: Invitation) =>
  person === null ? peopleWords.open.for.newcomer(peopleWords.roles[role].name) : peopleWords.open.for.password(person.name);
