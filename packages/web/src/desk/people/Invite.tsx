import { ROLES, type Role } from '@duskwatch/core';
import { useEffect, useRef, useState } from 'react';
import { copyText } from '../../browser/clipboard.ts';
import { dayText } from '../../format/day.ts';
import { localDay } from '../../format/local-day.ts';
import { peopleWords } from '../../text/people.ts';
import { FarmChoice } from './FarmChoice.tsx';
import type { MadeInvitation } from './queries.ts';
import { useInvite } from './useChange.ts';

/** A link that was just made, for a newcomer (null) or somebody known. */
export type Made = MadeInvitation & { readonly for: string | null };

/** One link for one newcomer, in a role. */
export function Invite({ farms, made }: { farms: readonly string[]; made: (made: Made) => void }) {
  const w = peopleWords.invite;
  const invite = useInvite();
  const [role, setRole] = useState<Role>('scout');
  const [chosen, choose] = useState<readonly string[]>([]);
  const [fault, setFault] = useState<string | null>(null);
  const submit = async () => {
    const lacking = role === 'grower' && chosen.length === 0;
    setFault(lacking ? peopleWords.faults.farms : null);
    if (lacking) return;
    const link = await invite({ role, farms: role === 'grower' ? chosen : [] });
    if (link) made({ ...link, for: null });
  };
  return (
    <section className="invite" aria-labelledby="invite-title">
      <h2 id="invite-title">{w.title}</h2>
      <fieldset className="choices role-choice">
        <legend>{w.role}</legend>
        {ROLES.map((each) => (
          <label key={each}>
            <input type="radio" name="role" checked={role === each} onChange={() => setRole(each)} />
            <span>
              <b>{peopleWords.roles[each].name}</b> <span className="faint">{peopleWords.roles[each].means}</span>
            </span>
          </label>
        ))}
      </fieldset>
      {role === 'grower' && <FarmChoice legend={w.farms} farms={farms} chosen={chosen} choose={choose} fault={fault} />}
      <button type="button" className="button primary" onClick={submit}>
        {w.submit}
      </button>
    </section>
  );
}

/** The link, shown once, ready to copy. */
export function MadeLink({ made }: { made: Made }) {
  const w = peopleWords.invite;
  const [said, say] = useState('');
  const box = useRef<HTMLElement>(null);
  const address = new URL(made.path, location.origin).href;
  useEffect(() => {
    box.current?.scrollIntoView({ block: 'nearest' });
    box.current?.focus();
  }, []);
  return (
    <section className="made-link" ref={box} tabIndex={-1} aria-label={w.link}>
      <p>{made.for === null ? w.made : w.madeFor(made.for)}</p>
      <p className="made-link-line">
        <input type="text" readOnly value={address} aria-label={w.link} onFocus={(event) => event.currentTarget.select()} />
        <button
          type="button"
          className="button primary"
          onClick={async () => say((await copyText(address)) ? w.copied : w.copyFailed)}
        >
          {w.copy}
        </button>
        <output className="said">{said}</output>
      </p>
      <p className="key">
        {w.until(dayText(localDay(made.expiresAt)))} {w.onlyNow}
      </p>
    </section>
  );
}
