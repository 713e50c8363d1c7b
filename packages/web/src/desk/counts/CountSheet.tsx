import {
  CONDITIONS,
  type Condition,
  type RoundTrap,
  type RoundView,
  UNFIT_REASONS,
  type UnfitReason,
  type Wording,
} from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { type ClipboardEvent, type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { countText } from '../../format/number.ts';
import { oddCount } from '../../shared/check/odd-count.ts';
import { type CountBox, choose, mayCount, missing, typeCount } from '../../shared/check/unsaved-check.ts';
import { countsWords as w } from '../../text/counts.ts';
import { language } from '../../text/language.ts';
import { useWording } from '../../text/wording.ts';
import { type Column, Table } from '../../ui/table/Table.tsx';
import { type PasteFault, readPasted } from './pasted.ts';
import { type CountRow, isCounted, type TypedCounts, useTypedOf } from './typed.ts';

/** As many faults of what was pasted as are read at once. */
const FAULTS_SHOWN = 6;

interface Props {
  readonly view: RoundView;
  readonly rows: readonly CountRow[];
  readonly typed: TypedCounts;
  /** Whether the sheet asks for more than the count. */
  readonly more: boolean;
}

/** A line for each trap of a day, with a box for what was in it. */
export function CountSheet({ view, rows, typed, more }: Props) {
  const wording = useWording();
  const sheet = useRef<HTMLDivElement>(null);
  const [pasted, tell] = useState<{ readonly lines: number } | { readonly faults: readonly PasteFault[] } | null>(null);
  const columns = useMemo((): Column<CountRow>[] => {
    const paste = (event: ClipboardEvent, box: CountBox, from: string) => {
      const text = event.clipboardData.getData('text/plain');
      // One figure goes into its box as if it were typed.
      if (/^\s*\d{1,6}\s*$/.test(text)) return;
      event.preventDefault();
      const traps = rows.filter((row) => !isCounted(row, view.on)).map(({ trap }) => trap.trapId);
      const read = readPasted(text, traps, from);
      if ('faults' in read) return tell(read);
      typed.set(Object.fromEntries([...read.counts].map(([trap, count]) => [trap, typeCount(typed.of(trap), box, count)])));
      tell({ lines: read.counts.size });
    };
    const line = { view, typed, paste };
    const boxes: Column<CountRow>[] = [
      { head: w.others, cell: (row) => <Count {...line} row={row} box="others" />, number: true },
      { head: w.condition, cell: (row) => <ConditionChoice {...line} row={row} /> },
      { head: w.remark, cell: (row) => <Remark {...line} row={row} /> },
    ];
    return [
      { head: w.station, said: ({ station }) => station, className: 'counts-station' },
      {
        head: w.trap,
        said: ({ trap }) => trap.trapId,
        names: true,
        cell: (row) => (
          <>
            <Link to="/traps/$trapId" params={{ trapId: row.trap.trapId }} search={{}} tabIndex={-1}>
              {row.trap.trapId}
            </Link>{' '}
            <span className="counts-insect">{row.trap.insectName[language]}</span>
            <Standing view={view} typed={typed} row={row} />
          </>
        ),
      },
      { head: w.last, said: ({ trap }) => lastOf(trap, wording) },
      { head: w.count, cell: (row) => <Count {...line} row={row} box="target" />, number: true },
      ...(more ? boxes : []),
    ];
  }, [rows, view, typed, more, wording]);

  const move = (event: KeyboardEvent) => {
    const steps: Readonly<Record<string, number>> = { Enter: 1, ArrowDown: 1, ArrowUp: -1 };
    const step = steps[event.key];
    const at = event.target as HTMLElement;
    if (step === undefined || !(at instanceof HTMLInputElement) || !at.dataset.box) return;
    event.preventDefault();
    const column = [...(sheet.current?.querySelectorAll<HTMLInputElement>(`input[data-box="${at.dataset.box}"]`) ?? [])];
    const next = column[column.indexOf(at) + step];
    next?.focus();
    next?.select();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the boxes in it
    <div ref={sheet} className="counts-sheet" onKeyDown={move}>
      <div role="status" className="counts-pasted">
        {pasted && 'lines' in pasted && <p>{w.pasted(pasted.lines)}</p>}
        {pasted && 'faults' in pasted && <PasteFaults faults={pasted.faults} />}
      </div>
      <Table label={w.title} takeAlong={false} height="page" rows={rows} keyOf={({ trap }) => trap.trapId} columns={columns} />
    </div>
  );
}

const lastOf = ({ lastVisit }: RoundTrap, { condition, unfitReason }: Wording): string => {
  if (lastVisit === null) return w.never;
  const what = lastVisit.count ?? (lastVisit.unfitReason ? unfitReason[lastVisit.unfitReason] : condition[lastVisit.condition]);
  return w.lastWas(typeof what === 'number' ? countText(what) : what, shortDay(lastVisit.on));
};

function PasteFaults({ faults }: { faults: readonly PasteFault[] }) {
  const say = (fault: PasteFault) =>
    fault.kind === 'too-long'
      ? w.pasteFaults['too-long'](fault.lines, fault.room)
      : w.pasteFaults[fault.kind](fault.line, fault.got);
  return (
    <div className="entries-fault">
      <b>{w.notPasted}</b>
      <ul>
        {faults.slice(0, FAULTS_SHOWN).map((fault) => (
          <li key={say(fault)}>{say(fault)}</li>
        ))}
        {faults.length > FAULTS_SHOWN && <li>{w.moreFaults(faults.length - FAULTS_SHOWN)}</li>}
      </ul>
    </div>
  );
}

interface Line {
  readonly view: RoundView;
  readonly typed: TypedCounts;
  readonly row: CountRow;
}

function Count(props: Line & { box: CountBox; paste: (event: ClipboardEvent, box: CountBox, from: string) => void }) {
  const { view, typed, row, box, paste } = props;
  const { trapId, insectName, lastVisit } = row.trap;
  const draft = useTypedOf(typed, trapId);
  if (isCounted(row, view.on)) {
    const count = box === 'target' ? lastVisit!.count : null;
    return count === null ? null : <span className="counts-held">{countText(count)}</span>;
  }
  return (
    <input
      className="counts-box"
      data-box={box}
      data-trap={trapId}
      inputMode="numeric"
      autoComplete="off"
      aria-label={box === 'target' ? w.countOf(trapId, insectName[language]) : w.othersOf(trapId)}
      disabled={!mayCount(draft)}
      value={draft[box]}
      onPaste={(event) => paste(event, box, trapId)}
      onChange={({ target }) => typed.set({ [trapId]: typeCount(draft, box, target.value) })}
    />
  );
}

function ConditionChoice({ view, typed, row }: Line) {
  const { trapId } = row.trap;
  const draft = useTypedOf(typed, trapId);
  const { condition, unfitReason } = useWording();
  if (isCounted(row, view.on)) return null;
  return (
    <span className="counts-condition">
      <select
        aria-label={w.conditionOf(trapId)}
        value={draft.condition}
        onChange={({ target }) => typed.set({ [trapId]: choose(draft, target.value as Condition) })}
      >
        {CONDITIONS.map((each) => (
          <option key={each} value={each}>
            {condition[each]}
          </option>
        ))}
      </select>
      {draft.condition === 'unfit' && (
        <select
          aria-label={w.why(trapId)}
          value={draft.unfit ?? ''}
          onChange={({ target }) => typed.set({ [trapId]: { ...draft, unfit: (target.value || null) as UnfitReason | null } })}
        >
          <option value="">{w.chooseWhy}</option>
          {UNFIT_REASONS.map((each) => (
            <option key={each} value={each}>
              {unfitReason[each]}
            </option>
          ))}
        </select>
      )}
    </span>
  );
}

function Remark({ view, typed, row }: Line) {
  const { trapId } = row.trap;
  const draft = useTypedOf(typed, trapId);
  if (isCounted(row, view.on)) return null;
  return (
    <input
      className="counts-remark"
      data-box="note"
      autoComplete="off"
      aria-label={w.remarkOf(trapId)}
      value={draft.note}
      onChange={({ target }) => typed.set({ [trapId]: { ...draft, note: target.value } })}
    />
  );
}

/** What is to be said of a line: that it is in the records, lacks something, or is far from what was expected. */
function Standing({ view, typed, row }: Line) {
  const draft = useTypedOf(typed, row.trap.trapId);
  if (isCounted(row, view.on)) return <span className="counts-done">{w.counted}</span>;
  if (draft === undefined || !typed.all()[row.trap.trapId]) return null;
  const lacks = missing(draft);
  if (lacks === 'count' || lacks === 'unfit-reason') return <span className="faults">{w.needs[lacks]}</span>;
  const odd = draft.target === '' ? null : oddCount(row.trap, view, view.on, Number(draft.target));
  return odd && <span className="counts-odd">{w.odd[odd.side](countText(odd.last))}</span>;
}
