import type { OwnField, OwnFieldsView, Wording } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link, useSearch } from '@tanstack/react-router';
import { dayTextFrom } from '../../format/day.ts';
import { ownFieldsQuery } from '../../shared/advice/own-fields.ts';
import { useDesk } from '../../shared/record/desk.ts';
import { cropText } from '../../text/names.ts';
import { ownFieldsWords as w } from '../../text/own-fields.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { useTitle } from '../../ui/media.ts';

/** What each of one's own fields asks for, the most urgent in the first line; what is only watched is one folded line. */
export function OwnFieldsPage() {
  const { on } = useSearch({ from: '/' });
  const { data: view, error, refetch, isPlaceholderData } = useQuery(ownFieldsQuery(on));
  useTitle(w.title);
  if (error && !view) return <Failure error={error} again={refetch} />;
  return (
    <main className="page own-fields" id="page" aria-busy={!view || isPlaceholderData}>
      <div className="own-head">
        <h1>{w.title}</h1>
        <p className="sub">{view ? w.countsTo(view.countsTo && dayTextFrom(view.countsTo, view.on)) : w.reading}</p>
      </div>
      {view && <Fields view={view} on={on} />}
    </main>
  );
}

function Fields({ view, on }: { view: OwnFieldsView; on: string | undefined }) {
  const wording = useWording();
  const { acting, resting } = view;
  const farms = new Set([...acting, ...resting].map(({ farm }) => farm));
  if (farms.size === 0)
    return (
      <section className="quiet">
        <h2>{w.none.title}</h2>
        <p>{w.none.text}</p>
      </section>
    );
  return (
    <>
      <ol className="own-list">
        {acting.map((field) => (
          <Acting key={field.fieldId} field={field} wording={wording} on={on} withFarm={farms.size > 1} />
        ))}
      </ol>
      {resting.length > 0 && (
        <Folded
          className="own-rest"
          title={
            <>
              <span>{acting.length === 0 ? <b>{w.nothing}</b> : w.rest}</span>
              <span className="own-rest-sum">{restSum(resting, wording)}</span>
            </>
          }
        >
          <ul>
            {resting.map((field) => (
              <li key={field.fieldId}>
                <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }}>
                  <b>{field.name}</b>
                  <span>
                    {wording.verb[field.lead.verb]}: {wording.insect(field.lead.insect)}
                  </span>
                  <small>{wording.inShort(field.lead)}</small>
                </Link>
              </li>
            ))}
          </ul>
        </Folded>
      )}
    </>
  );
}

/** `Watch · 4 fields, traps checked next Sun 19 July`. */
function restSum(resting: readonly OwnField[], wording: Wording): string {
  const verbs = [...new Set(resting.map(({ lead }) => wording.verb[lead.verb]))].join(', ');
  const [next] = resting.flatMap(({ nextCheck }) => nextCheck ?? []).sort();
  return [`${verbs} · ${w.fields(resting.length)}`, ...(next ? [w.next(wording.day(next))] : [])].join(', ');
}

interface ActingProps {
  readonly field: OwnField;
  readonly wording: Wording;
  readonly on: string | undefined;
  readonly withFarm: boolean;
}

function Acting({ field, wording, on, withFarm }: ActingProps) {
  const { lead, further, fieldId } = field;
  const waits = useDesk().entries.filter(
    ({ state, revision: { value } }) => state === 'pending' && value !== null && 'fieldId' in value && value.fieldId === fieldId,
  ).length;
  const until = lead.cautions.filter(({ kind }) => kind === 'reentry' || kind === 'preharvest');
  return (
    <li className={`verb-${lead.verb}`}>
      <Link to="/fields/$fieldId" params={{ fieldId }} search={{ on }}>
        <span className="own-name">
          <b>{field.name}</b>, {cropText(field)}
          {withFarm && <small> · {field.farm}</small>}
        </span>
        <span className="own-verb">
          <b className="verb-word">{wording.verb[lead.verb]}</b> {wording.when(lead)}
          {w.of(wording.insect(lead.insect))}
        </span>
        <span className="own-why">{wording.inShort(lead)}</span>
        {until.map((caution) => (
          <span key={caution.kind} className="own-caution">
            {wording.caution(caution)}
          </span>
        ))}
        {further.length > 0 && (
          <span className="own-also">
            {w.also}:{' '}
            {further
              .map(
                (each) =>
                  [wording.verb[each.verb], wording.when(each)].filter(Boolean).join(' ') + w.of(wording.insect(each.insect)),
              )
              .join('; ')}
          </span>
        )}
        {waits > 0 && <span className="not-sent">{w.waits(waits)}</span>}
      </Link>
    </li>
  );
}
