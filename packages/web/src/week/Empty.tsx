import { useQuery } from '@tanstack/react-query';
import { sessionQuery } from '../api/session.ts';
import { words } from '../words/index.ts';

/** A week without fields: why there are none for this person, and what to do about it. */
export function NoFields() {
  const { data: session } = useQuery(sessionQuery);
  const w = words.week;
  if (session?.person?.role === 'reader') return <Note title={w.reader.title} text={w.reader.text} />;
  if (session?.person?.role === 'grower')
    return <Note title={w.noFields.title} text={w.noFields.text(session.person.farms.join(', '))} />;
  return <Ways />;
}

const Note = ({ title, text }: { title: string; text: string }) => (
  <section className="notice">
    <h2>{title}</h2>
    <p>{text}</p>
  </section>
);

/** A program with no fields: the two ways to begin. */
function Ways() {
  const w = words.empty;
  return (
    <section className="notice">
      <h2>{w.title}</h2>
      <p>{w.lead}</p>
      <div className="ways">
        <div>
          <h3>{w.demo}</h3>
          <p>{w.demoText}</p>
          <code>{w.demoCommand}</code>
        </div>
        <div>
          <h3>{w.own}</h3>
          <p>{w.ownText}</p>
          <code>{w.ownCommand}</code>
        </div>
      </div>
    </section>
  );
}
