import { words } from '../words/index.ts';

/** A program with no fields: the two ways to begin. */
export function Empty() {
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
