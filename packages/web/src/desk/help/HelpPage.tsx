import { catalogue, citation } from '@duskwatch/core';
import { useLocation } from '@tanstack/react-router';
import { useEffect } from 'react';
import { helpWords as w } from '../../text/help.ts';
import { language } from '../../text/language.ts';
import { useWording } from '../../text/wording.ts';
import { useTitle } from '../../ui/media.ts';

const VERBS = ['decide', 'scout', 'covered', 'watch', 'blind'] as const;
const PARTS = ['reading', 'glossary', 'keys', 'cautions'] as const;

/** How to read each page, what the words mean, the keys, and the cautions. It asks the server for nothing. */
export function HelpPage() {
  const hash = useLocation({ select: (location) => location.hash });
  const wording = useWording();
  useTitle(w.title);
  useEffect(() => {
    // The router looks for the part before this page is drawn.
    if (hash) document.getElementById(hash)?.scrollIntoView();
  }, [hash]);
  return (
    <main className="page help-page" id="page">
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.sub}</p>
        </div>
      </div>
      <nav className="help-contents" aria-label={w.contents}>
        {PARTS.map((part) => (
          <a key={part} href={`#${part}`}>
            {w[part]}
          </a>
        ))}
      </nav>
      <section aria-labelledby="reading">
        <h2 id="reading">{w.reading}</h2>
        {Object.entries(w.pages).map(([id, { title, text }]) => (
          <section key={id} className="help-part" aria-labelledby={`read-${id}`}>
            <h3 id={`read-${id}`}>{title}</h3>
            <p>{text}</p>
          </section>
        ))}
      </section>
      <section aria-labelledby="glossary">
        <h2 id="glossary">{w.glossary}</h2>
        <dl className="help-terms">
          {VERBS.map((verb) => (
            <div key={verb}>
              <dt>{wording.verb[verb]}</dt>
              <dd>{w.verbs[verb]}</dd>
            </div>
          ))}
          {Object.entries(w.terms).map(([id, { word, text }]) => (
            <div key={id}>
              <dt>{word}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section aria-labelledby="keys">
        <h2 id="keys">{w.keys}</h2>
        <dl className="help-terms">
          {Object.entries(w.keyboard).map(([id, { keys, text }]) => (
            <div key={id}>
              <dt>
                {keys.split(' ').map((key) => (
                  <kbd key={key}>{key}</kbd>
                ))}
              </dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </section>
      <Cautions />
    </main>
  );
}

/** The catalogue's own, which stand beside the acts as well. */
function Cautions() {
  const cautions = catalogue.practices.filter(({ weight }) => weight === 'caution');
  const acts = (Object.keys(w.acts) as (keyof typeof w.acts)[]).filter((act) => cautions.some((each) => each.act === act));
  return (
    <section aria-labelledby="cautions">
      <h2 id="cautions">{w.cautions}</h2>
      <p className="lead">{w.cautionsText}</p>
      {acts.map((act) => (
        <section key={act} className="help-part" aria-label={w.acts[act]}>
          <h3>{w.acts[act]}</h3>
          <ul>
            {cautions
              .filter((each) => each.act === act)
              .map((each) => (
                <li key={each.id}>
                  {each.text[language]}{' '}
                  <small lang="en">
                    {w.source}: {citation(each.source)}
                  </small>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </section>
  );
}
