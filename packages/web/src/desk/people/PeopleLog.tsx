import { ROLES } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { instantText } from '../../format/instant.ts';
import { peopleWords } from '../../text/people.ts';
import { type LogEntry, logQuery } from './queries.ts';

/** Who did what about people, newest first. */
export function PeopleLog() {
  const w = peopleWords.log;
  const { data: entries = [] } = useQuery(logQuery);
  return (
    <details className="behind">
      <summary>{w.title}</summary>
      {entries.length === 0 ? (
        <p>{w.none}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        <section className="behind-scroll" aria-label={w.title} tabIndex={0}>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">{w.when}</th>
                <th scope="col">{w.who}</th>
                <th scope="col">{w.what}</th>
              </tr>
            </thead>
            <tbody>
              {entries.map((entry, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows carry no state and two may be alike
                <tr key={index}>
                  <td>{instantText(entry.at)}</td>
                  <td>{entry.actor}</td>
                  <td>{sentence(entry)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </details>
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
