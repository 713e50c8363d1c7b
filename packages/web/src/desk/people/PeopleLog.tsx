import { ROLES } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { instantText } from '../../format/instant.ts';
import { peopleWords } from '../../text/people.ts';
import { Folded } from '../../ui/Folded.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { type LogEntry, logQuery } from './queries.ts';

/** Who did what about people, newest first. */
export function PeopleLog() {
  const w = peopleWords.log;
  const { data: entries = [] } = useQuery(logQuery);
  return (
    <Folded title={w.title}>
      {entries.length === 0 ? (
        <p>{w.none}</p>
      ) : (
        <Table
          label={w.title}
          height="part"
          rows={entries}
          keyOf={(_, index) => index}
          columns={[
            { head: w.when, value: ({ at }) => at, cell: ({ at }) => instantText(at) },
            { head: w.who, value: ({ actor }) => actor },
            { head: w.what, value: sentence },
          ]}
        />
      )}
    </Folded>
  );
}

function sentence({ action, actor, subject, detail }: LogEntry): string {
  const w = peopleWords.log;
  const said = w.actions[action as keyof typeof w.actions] ?? action;
  const role = ROLES.find((each) => each === detail);
  const became = role ? peopleWords.roles[role].name : detail;
  const whole = subject === null || subject === actor ? said : `${said} ${w.of(subject)}`;
  return became ? `${whole}: ${became}` : whole;
}
