import { type Person, ROLES, type Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { sessionQuery } from '../../api/session.ts';
import { peopleWords } from '../../text/people.ts';
import { FarmChoice } from './FarmChoice.tsx';
import type { Made } from './Invite.tsx';
import { useChange, useInvite } from './useChange.ts';

/** Everybody who has joined. What is changed here holds at once, and can be taken back. */
export function PeopleTable(props: { people: readonly Person[]; farms: readonly string[]; made: (made: Made) => void }) {
  const w = peopleWords.people;
  return (
    <section className="people-list" aria-label={w.title}>
      <table className="figures people-table">
        <thead>
          <tr>
            <th scope="col">{w.columns.name}</th>
            <th scope="col">{w.columns.role}</th>
            <th scope="col">{w.columns.farms}</th>
            <th scope="col">{w.columns.state}</th>
            <th scope="col">{w.columns.acts}</th>
          </tr>
        </thead>
        <tbody>
          {props.people.map((person) => (
            <PersonRow key={person.id} person={person} farms={props.farms} made={props.made} />
          ))}
        </tbody>
      </table>
      <p className="key">{w.ends}</p>
    </section>
  );
}

function PersonRow({ person, farms, made }: { person: Person; farms: readonly string[]; made: (made: Made) => void }) {
  const w = peopleWords.people;
  const { data: session } = useQuery(sessionQuery);
  const change = useChange();
  const invite = useInvite();
  const [growing, setGrowing] = useState(false);
  const isYou = session?.person?.id === person.id;
  const role: Role = growing ? 'grower' : person.role;
  const chooseRole = (next: Role) => {
    // A grower sees some farms: which ones comes first.
    setGrowing(next === 'grower' && person.role !== 'grower');
    if (next !== 'grower' && next !== person.role) void change(person, { role: next });
  };
  return (
    <tr className={person.disabled ? 'disabled' : undefined}>
      <th scope="row">
        {person.name} {isYou && <span className="faint">({w.you})</span>}
      </th>
      <td data-label={w.columns.role}>
        <select
          className="select"
          aria-label={w.roleOf(person.name)}
          value={role}
          disabled={isYou || person.disabled}
          onChange={(event) => chooseRole(event.currentTarget.value as Role)}
        >
          {ROLES.map((each) => (
            <option key={each} value={each}>
              {peopleWords.roles[each].name}
            </option>
          ))}
        </select>
      </td>
      <td data-label={w.columns.farms}>
        {role === 'grower' ? (
          <GrowerFarms
            person={person}
            farms={farms}
            open={growing}
            save={async (chosen) => {
              await change(person, growing ? { role: 'grower', farms: chosen } : { farms: chosen });
              setGrowing(false);
            }}
          />
        ) : role === 'reader' ? (
          w.noPlaces
        ) : (
          w.allFarms
        )}
      </td>
      <td data-label={w.columns.state}>
        <label className="check-label">
          <input
            type="checkbox"
            aria-label={w.mayOf(person.name)}
            checked={!person.disabled}
            disabled={isYou}
            onChange={(event) => void change(person, { disabled: !event.currentTarget.checked })}
          />
          {person.disabled ? w.no : w.yes}
        </label>
      </td>
      <td>
        <button
          type="button"
          className="plain-button"
          aria-label={w.newPasswordOf(person.name)}
          disabled={person.disabled}
          onClick={async () => {
            const link = await invite({ personId: person.id });
            if (link) made({ ...link, for: person.name });
          }}
        >
          {w.newPassword}
        </button>
      </td>
    </tr>
  );
}

function GrowerFarms(props: {
  person: Person;
  farms: readonly string[];
  open: boolean;
  save: (farms: readonly string[]) => Promise<void>;
}) {
  const w = peopleWords.people;
  const { person, open } = props;
  const [chosen, choose] = useState(person.farms);
  const [fault, setFault] = useState<string | null>(null);
  const [unfolded, unfold] = useState(open);
  // Farms without fields any more are still this person's until somebody says otherwise.
  const farms = [...new Set([...props.farms, ...person.farms])];
  const save = async () => {
    if (chosen.length === 0) return setFault(peopleWords.faults.farms);
    setFault(null);
    await props.save(chosen);
    unfold(false);
  };
  return (
    <details open={unfolded} onToggle={(event) => unfold(event.currentTarget.open)}>
      <summary>{person.farms.join(', ') || w.chooseFarms}</summary>
      <FarmChoice legend={w.farmsOf(person.name)} farms={farms} chosen={chosen} choose={choose} fault={fault} />
      <button type="button" className="button" onClick={save}>
        {w.saveFarms}
      </button>
    </details>
  );
}
