import { ROLES } from '@duskwatch/core';
import { peopleWords } from '../../text/people.ts';

export function RoleList() {
  return (
    <dl className="roles">
      {ROLES.map((role) => (
        <div key={role}>
          <dt>{peopleWords.roles[role].name}</dt>
          <dd>{peopleWords.roles[role].means}</dd>
        </div>
      ))}
    </dl>
  );
}
