import type { TrapRecord, TrapView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { type ReactNode, useState } from 'react';
import { ApiError } from '../../api/client.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { SitingAside } from '../../shared/record/Aside.tsx';
import { useDesk } from '../../shared/record/desk.ts';
import { Editor } from '../../shared/record/Editor.tsx';
import { waiting } from '../../shared/record/later.ts';
import { recordsQuery, type StoredVersion } from '../../shared/record/queries.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { trapQuery } from '../../shared/traps/queries.ts';
import { skippedText } from '../../shared/traps/skipped.ts';
import { degreesText, dueText, hungText, lureText, rateOf } from '../../shared/traps/words.ts';
import { historyWords } from '../../text/history.ts';
import { localName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { useTitle } from '../../ui/media.ts';
import { Panel } from '../../ui/Panel.tsx';
import { MoveForm } from './MoveForm.tsx';
import { RetireForm } from './RetireForm.tsx';
import { TrapChart } from './TrapChart.tsx';
import { Checks, Lures, Seasons } from './trap-tables.tsx';

const route = getRouteApi('/traps/$trapId');

/** One trap: what it is, what it told, and what can be done with it. */
export function TrapPage() {
  const { trapId } = route.useParams();
  const search = route.useSearch();
  const { data: trap, error, refetch, isPlaceholderData } = useQuery(trapQuery(trapId, search.on));
  useTitle(trapId);
  if (error && !trap) {
    if (error instanceof ApiError && error.kind === 'not-found') return <NotThere />;
    return <Failure error={error} again={refetch} />;
  }
  return (
    <main className="page trap-page" id="page" aria-busy={!trap || isPlaceholderData}>
      <Back on={search.on} />
      <div className="page-head">
        <div>
          <h1>{trapId}</h1>
          <p className="sub">
            {trap ? `${trap.station} · ${localName(trap.insect.commonName)} · ${hungText(trap, trap.on)}` : w.loading}
          </p>
        </div>
      </div>
      {trap ? <Trap trap={trap} /> : <div className="skeleton skeleton-field" aria-hidden="true" />}
    </main>
  );
}

const Back = ({ on }: { on: string | undefined }) => (
  <p className="back">
    <Link to="/fields" search={{ on }}>
      ‹ {w.trap.back}
    </Link>
  </p>
);

function NotThere() {
  return (
    <main className="page notice" id="page">
      <Back on={undefined} />
      <h1>{w.trap.missing}</h1>
    </main>
  );
}

type Doing = 'edit' | 'move' | 'retire' | 'check' | 'lure';

function Trap({ trap }: { trap: TrapView }) {
  const [doing, begin] = useState<Doing | null>(null);
  const mayWrite = useMayWrite();
  const { entries } = useDesk();
  const { data: records } = useQuery(recordsQuery('traps'));
  const record = records?.find((each) => each.value.trapId === trap.trapId) ?? null;
  const notSent =
    waiting(entries, 'checks').filter((each) => each.trapId === trap.trapId).length +
    waiting(entries, 'lures').filter((each) => each.trapId === trap.trapId).length +
    waiting(entries, 'traps').filter((each) => each.trapId === trap.trapId).length;
  const offer = (what: Doing, label: string, primary = false) => (
    <button key={what} type="button" className={primary ? 'button primary' : 'button'} onClick={() => begin(what)}>
      {label}
    </button>
  );
  const hangs = trap.state === 'hanging';
  return (
    <>
      <p className="actions trap-actions">
        {mayWrite('checks') && hangs && offer('check', w.trap.newCheck, true)}
        {mayWrite('lures') && hangs && offer('lure', w.trap.newLure)}
        {record &&
          mayWrite('traps') && [
            offer('edit', w.trap.edit),
            ...(trap.state === 'taken-down' ? [] : [offer('move', w.trap.move), offer('retire', w.trap.retire)]),
          ]}
        <HistoryButton kind="traps" recordKey={trap.trapId} text={historyWords.button} />
        {notSent > 0 && <span className="not-sent">{recordWords.unsent(notSent)}</span>}
      </p>
      <Facts trap={trap} />
      <TrapChart trap={trap} />
      <Seasons trap={trap} />
      <Checks trap={trap} />
      <Lures trap={trap} />
      {doing && <Doing doing={doing} trap={trap} record={record} close={() => begin(null)} />}
    </>
  );
}

function Facts({ trap }: { trap: TrapView }) {
  const wording = useWording();
  const facts: readonly (readonly [string, ReactNode])[] = [
    [w.trap.at, trap.station],
    [w.columns.design, wording.design[trap.design]],
    [w.columns.hung, hungText(trap, trap.on)],
    [
      w.trap.coordinates,
      trap.latitude === null || trap.longitude === null ? w.trap.noCoordinates : degreesText(trap.latitude, trap.longitude),
    ],
    [w.columns.rate, trap.newest ? `${rateOf(trap)}, ${w.overNights(trap.newest.nights)}` : rateOf(trap)],
    [w.columns.due, trap.skipped ? `${dueText(trap, trap.on)}, ${skippedText(trap.skipped)}` : dueText(trap, trap.on)],
    [w.columns.lure, lureText(trap)],
    [
      w.columns.informs,
      trap.informs.length === 0
        ? w.informsNone
        : trap.informs.map(({ fieldId, name, farm }, index) => (
            <span key={fieldId}>
              {index > 0 && ', '}
              <Link to="/fields/$fieldId" params={{ fieldId }} hash={trap.insect.id}>
                {name}
              </Link>{' '}
              ({farm})
            </span>
          )),
    ],
  ];
  return (
    <section className="trap-facts" aria-labelledby="trap-facts">
      <h2 className="unseen" id="trap-facts">
        {w.trap.facts}
      </h2>
      <dl>
        {facts.map(([name, said]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{said}</dd>
          </div>
        ))}
      </dl>
      <Folded title={w.siting.title}>
        <SitingAside design={trap.design} insect={trap.insect.id} />
      </Folded>
    </section>
  );
}

function Doing(props: {
  doing: Doing;
  trap: TrapView;
  record: (StoredVersion<'traps'> & { readonly value: TrapRecord }) | null;
  close: () => void;
}) {
  const { doing, trap, record, close } = props;
  const { trapId } = trap;
  if (doing === 'check') {
    const visit = 1 + trap.visits.filter(({ on }) => on === trap.on).length;
    return (
      <Panel title={recordWords.titles.add.checks} close={close}>
        <Editor
          kind="checks"
          start={{ checkedOn: trap.on, condition: 'fit', emptied: true }}
          kept={{ trapId, visit }}
          held={null}
          close={close}
        />
      </Panel>
    );
  }
  if (doing === 'lure') {
    const lifeDays = trap.lures[0]?.lifeDays ?? null;
    return (
      <Panel title={recordWords.titles.add.lures} close={close}>
        <Editor kind="lures" start={{ placedOn: trap.on, lifeDays }} kept={{ trapId }} held={null} close={close} />
      </Panel>
    );
  }
  if (record === null) return null;
  const { value } = record;
  const base = { recordId: record.recordId, revisionId: record.revisionId };
  if (doing === 'edit') {
    return (
      <Panel title={recordWords.titles.edit.traps} close={close}>
        <Editor kind="traps" start={value} kept={{ trapId }} held={{ base, value }} close={close} />
      </Panel>
    );
  }
  return doing === 'move' ? (
    <Panel title={w.move.title(trapId)} close={close}>
      <MoveForm trap={trap} held={{ base, value }} close={close} />
    </Panel>
  ) : (
    <Panel title={w.retire.title(trapId)} close={close}>
      <RetireForm trap={trap} held={{ base, value }} close={close} />
    </Panel>
  );
}
