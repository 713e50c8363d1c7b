import { leftEmpty, type PlanRecord, type SeasonLineView, type SeasonView, TRAP_DESIGNS, type TrapDesign } from '@duskwatch/core';
import { shortDate } from '../../format/day.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { seasonWords } from '../../text/season.ts';
import { useWording } from '../../text/wording.ts';
import { Field, SelectField } from '../../ui/Field.tsx';
import { useHeld, useWrite } from './useDecide.ts';

export const nothingDecided = (season: number, insect: string, area: string): PlanRecord => ({
  ...leftEmpty('plans'),
  season,
  insect,
  area,
});

const DECIDED = ['design', 'traps', 'hangOn', 'takeDownOn', 'lureLifeDays', 'note'] as const;

/** What is decided for an insect in every area, in place. An empty box is a proposal; what is typed is written when left. */
export function Decide({ view, insect, line }: { view: SeasonView; insect: string; line: SeasonLineView }) {
  const w = seasonWords.plan;
  const wording = useWording();
  const mayWrite = useMayWrite();
  const write = useWrite('plans');
  const nothing = nothingDecided(view.season, insect, 'all');
  const key = `${view.season}|${insect}|all`;
  const now = useHeld('plans').get(key)?.value ?? nothing;
  if (!mayWrite('plans')) return null;
  // An empty decision is removed, so that the proposal stands again.
  const change = (part: Partial<PlanRecord>) =>
    write(key, (before) => {
      const next = { ...(before ?? nothing), ...part };
      return DECIDED.some((property) => next[property] !== null) ? next : null;
    });
  const { design } = line.design;
  return (
    <fieldset className="decide no-print">
      <legend>{w.everywhere}</legend>
      <SelectField
        label={w.design}
        value={now.design ?? ''}
        all={now.design === null && design ? w.proposed(wording.design[design]) : seasonWords.asProposed}
        choices={TRAP_DESIGNS.map((each) => [each, wording.design[each]])}
        choose={(chosen) => change({ design: (chosen || null) as TrapDesign | null })}
      />
      <Whole name={w.trapsPerArea} value={now.traps} most={1_000} write={(traps) => change({ traps })} />
      <DayBox
        name={w.hang}
        value={now.hangOn}
        proposed={line.hang.basis === 'heat' ? line.hang.on : line.hang.basis === 'chosen' ? line.hang.proposed : null}
        write={(hangOn) => change({ hangOn })}
      />
      <DayBox name={w.takeDown} value={now.takeDownOn} proposed={null} write={(takeDownOn) => change({ takeDownOn })} />
      <Whole name={w.life} value={now.lureLifeDays} most={400} write={(lureLifeDays) => change({ lureLifeDays })} />
    </fieldset>
  );
}

function Whole(props: { name: string; value: number | null; most: number; write: (value: number | null) => void }) {
  const { name, value, most, write } = props;
  return (
    <Field label={name} className="small">
      {(box) => (
        <input
          {...box}
          key={value}
          type="text"
          inputMode="numeric"
          size={5}
          defaultValue={value ?? ''}
          placeholder="–"
          onBlur={(event) => {
            const text = event.currentTarget.value.trim();
            const typed = Number(text);
            if (text === '') write(null);
            else if (Number.isInteger(typed) && typed >= 1 && typed <= most) write(typed);
            else event.currentTarget.value = String(value ?? '');
          }}
          onKeyDown={leaveOnEnter}
        />
      )}
    </Field>
  );
}

function DayBox(props: { name: string; value: string | null; proposed: string | null; write: (value: string | null) => void }) {
  const { name, value, proposed, write } = props;
  return (
    <Field label={name} className="small" hint={proposed ? seasonWords.plan.proposed(shortDate(proposed)) : undefined}>
      {(box) => (
        <input
          {...box}
          key={value}
          type="date"
          defaultValue={value ?? ''}
          onBlur={(event) => {
            const { value: typed, validity } = event.currentTarget;
            if (validity.badInput || (typed !== '' && typed < '1900')) event.currentTarget.value = value ?? '';
            else write(typed || null);
          }}
          onKeyDown={leaveOnEnter}
        />
      )}
    </Field>
  );
}

function leaveOnEnter(event: React.KeyboardEvent<HTMLInputElement>): void {
  if (event.key === 'Enter') event.currentTarget.blur();
}
