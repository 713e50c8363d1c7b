import { type Person, ROLES, type Role } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { sessionQuery } from '../../api/session.ts';
import { peopleWords } from '../../text/people.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { FarmChoice } from './FarmChoice.tsx';
import type { Made } from './Invite.tsx';
import { useChange, useInvite } from './useChange.ts';

/** Everybody who has joined. What is changed here holds at once, and can be taken back. */
export function PeopleTable(props: { people: readonly Person[]; farms: readonly string[]; made: (made: Made) => void }) {
  const w = peopleWords.people;
  const { people, farms, made } = props;
  const { data: session } = useQuery(sessionQuery);
  const change = useChange();
  const invite = useInvite();
  // Who is about to become a grower: one sees some farms, and which ones comes first.
  const [growing, setGrowing] = useState<ReadonlySet<string>>(new Set());
  const grow = (id: string, grows: boolean) =>
    setGrowing((before) => new Set([...before].filter((each) => each !== id).concat(grows ? [id] : [])));
  const isYou = ({ id }: Person) => session?.person?.id === id;
  const roleOf = ({ id, role }: Person): Role => (growing.has(id) ? 'grower' : role);
  const chooseRole = (person: Person, next: Role) => {
    grow(person.id, next === 'grower' && person.role !== 'grower');
    if (next !== 'grower' && next !== person.role) void change(person, { role: next });
  };
  const saveFarms = async (person: Person, chosen: readonly string[]) => {
    await change(person, growing.has(person.id) ? { role: 'grower', farms: chosen } : { farms: chosen });
    grow(person.id, false);
  };
  const link = async ({ id, name }: Person) => {
    const invitation = await invite({ personId: id });
    if (invitation) made({ ...invitation, for: name });
  };
  return (
    <section className="people-list" aria-label={w.title}>
      <Table
        label={w.title}
        className="people-table"
        rows={people}
        keyOf={({ id }) => id}
        rowClass={({ disabled }) => (disabled ? 'disabled' : undefined)}
        columns={[
          {
            head: w.columns.name,
            value: ({ name }) => name,
            cell: (person) => (
              <>
                {person.name} {isYou(person) && <span className="faint">({w.you})</span>}
              </>
            ),
            names: true,
          },
          {
            head: w.columns.role,
            value: ({ role }) => peopleWords.roles[role].name,
            cell: (person) => (
              <select
                className="select"
                aria-label={w.roleOf(person.name)}
                value={roleOf(person)}
                disabled={isYou(person) || person.disabled}
                onChange={(event) => chooseRole(person, event.currentTarget.value as Role)}
              >
                {ROLES.map((each) => (
                  <option key={each} value={each}>
                    {peopleWords.roles[each].name}
                  </option>
                ))}
              </select>
            ),
          },
          {
            head: w.columns.farms,
            value: (person) =>
              person.role === 'grower' ? person.farms.join(', ') : person.role === 'reader' ? w.noPlaces : w.allFarms,
            cell: (person) => {
              const role = roleOf(person);
              if (role !== 'grower') return role === 'reader' ? w.noPlaces : w.allFarms;
              const grows = growing.has(person.id);
              return (
                <GrowerFarms
                  key={String(grows)}
                  person={person}
                  farms={farms}
                  open={grows}
                  save={(chosen) => saveFarms(person, chosen)}
                />
              );
            },
          },
          {
            head: w.columns.state,
            value: ({ disabled }) => (disabled ? w.no : w.yes),
            cell: (person) => (
              <label className="check-label">
                <input
                  type="checkbox"
                  aria-label={w.mayOf(person.name)}
                  checked={!person.disabled}
                  disabled={isYou(person)}
                  onChange={(event) => void change(person, { disabled: !event.currentTarget.checked })}
                />
                {person.disabled ? w.no : w.yes}
              </label>
            ),
          },
          {
            head: w.columns.acts,
            cell: (person) => (
              <button
                type="button"
                className="plain-button"
                aria-label={w.newPasswordOf(person.name)}
                disabled={person.disabled}
                onClick={() => void link(person)}
              >
                {w.newPassword}
              </button>
            ),
          },
        ]}
      />
      <p className="key">{w.ends}</p>
    </section>
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
  // Each time anew: folded up again.
  const [saves, setSaves] = useState(0);
  // Farms without fields any more are still this person's until somebody says otherwise.
  const farms = [...new Set([...props.farms, ...person.farms])];
  const save = async () => {
    if (chosen.length === 0) return setFault(peopleWords.faults.farms);
    setFault(null);
    await props.save(chosen);
    setSaves((before) => before + 1);
  };
  return (
    <Folded key={saves} open={open && saves === 0} title={person.farms.join(', ') || w.chooseFarms}>
      <FarmChoice legend={w.farmsOf(person.name)} farms={farms} chosen={chosen} choose={choose} fault={fault} />
      <button type="button" className="button" onClick={save}>
        {w.saveFarms}
      </button>
    </Folded>
  );
}
