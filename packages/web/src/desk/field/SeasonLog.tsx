import type { FieldView } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { rateText } from '../../format/number.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { fieldPageWords } from '../../text/field-page.ts';
import { historyWords } from '../../text/history.ts';
import { sampleKind, stageName } from '../../text/names.ts';
import { recordWords } from '../../text/record.ts';
import { useWording } from '../../text/wording.ts';
import { Table } from '../../ui/table/Table.tsx';

type Kind = 'stages' | 'samples' | 'treatments' | 'decisions';

interface Written {
  readonly on: string;
  readonly kind: Kind;
  readonly key: string;
  readonly said: string;
  readonly photo?: string | null;
}

/** All that was written down of the field this season, the newest first, each with its history. */
export function SeasonLog({ view }: { view: FieldView }) {
  const written = useWritten(view);
  const w = fieldPageWords.record;
  return (
    <section className="season-log" aria-labelledby="season-log">
      <h2 id="season-log">
        {w.log} <small>{w.history(written.length)}</small>
      </h2>
      {written.length === 0 ? (
        <p className="absent">{w.nothing}</p>
      ) : (
        <Table
          label={w.log}
          rows={written}
          keyOf={({ kind, key }) => `${kind}|${key}`}
          columns={[
            { head: recordWords.day, value: ({ on }) => on, cell: ({ on }) => dayText(on) },
            { head: recordWords.kindHead, value: ({ kind }) => recordWords.kinds[kind] },
            {
              head: recordWords.said,
              value: ({ said }) => said,
              cell: ({ said, photo, on }) => (
                <>
                  {said}
                  {photo && (
                    <>
                      {', '}
                      <a href={`/api/photos/${photo}`} target="_blank" rel="noreferrer">
                        {recordWords.photoOf(dayText(on))}
                      </a>
                    </>
                  )}
                </>
              ),
            },
            {
              head: historyWords.button,
              cell: ({ kind, key }) => <HistoryButton kind={kind} recordKey={key} />,
            },
          ]}
        />
      )}
    </section>
  );
}

function useWritten(view: FieldView): Written[] {
  const wording = useWording();
  const { fieldId, crop } = view.field;
  const rate = (value: number | null, unit: keyof typeof recordWords.rateUnits | null) =>
    value === null || unit === null ? [] : [`${rateText(value)} ${recordWords.rateUnits[unit]}`];
  return [
    ...view.stages.map(({ stage, observedOn }) => ({
      on: observedOn,
      kind: 'stages' as const,
      key: `${fieldId}|${observedOn}`,
      said: stageName(crop, stage),
    })),
    ...view.insects.flatMap(({ insect, samples, treatments, decisions }) => {
      const of = wording.insect(insect.id);
      return [
        ...samples.map(({ sampledOn, kind, infested, examined, photo }) => ({
          on: sampledOn,
          kind: 'samples' as const,
          key: `${fieldId}|${insect.id}|${sampledOn}|${kind}`,
          said: `${of}: ${infested ?? recordWords.nothing} / ${examined} ${sampleKind(kind)}`,
          photo,
        })),
        ...decisions.map(({ decidedOn, decision, reason, note }) => ({
          on: decidedOn,
          kind: 'decisions' as const,
          key: `${fieldId}|${insect.id}|${decidedOn}|${decision}`,
          said: [`${of}: ${wording.decision[decision]}, ${wording.decisionReason[reason]}`, ...(note ? [note] : [])].join('; '),
        })),
        ...treatments.map(({ appliedOn, appliedAt, product, rate: howMuch, rateUnit }) => ({
          on: appliedOn,
          kind: 'treatments' as const,
          key: `${fieldId}|${insect.id}|${appliedOn}|${product}`,
          said: [
            `${of}: ${product || recordWords.productUnknown}`,
            ...rate(howMuch, rateUnit),
            ...(appliedAt ? [appliedAt] : []),
          ].join(', '),
        })),
      ];
    }),
  ].sort((a, b) => b.on.localeCompare(a.on));
}
