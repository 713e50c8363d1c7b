import { memo, useMemo } from 'react';
import { lineScales } from '../../shared/advice/line-scale.ts';
import { isNoHost } from '../../shared/advice/no-host.ts';
import { localName, shortReason } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { openIn, PORTIONS } from './chunks.ts';
import { useDrawn } from './drawing.ts';
import { FoldLine } from './FoldLine.tsx';
import { OpenEvidence } from './LazyEvidence.tsx';
import { cellKey } from './select.ts';
import { useChunks } from './useChunks.ts';
import { WeekCellButton } from './WeekCell.tsx';
import { type ChunkProps, FieldName, type FieldProps, groupName, type WeekBodyProps } from './WeekTable.tsx';

/** The same week for a narrow page: a field, and a line to an insect. */
export function WeekList({ selection, view, open, unfolded, ...rest }: WeekBodyProps) {
  const { columns, groups } = selection;
  const scaleOf = useMemo(() => lineScales(view), [view]);
  const { chunks, toFollow } = useChunks(groups, PORTIONS.narrow, unfolded);
  const wording = useWording();
  return (
    <div className="week-list">
      {chunks.map((chunk) => (
        <ListChunk
          key={chunk.key}
          {...{ chunk, columns, scaleOf, wording, today: view.on }}
          open={openIn(chunk, open)}
          {...rest}
        />
      ))}
      {toFollow > 0 && <div style={{ height: toFollow * USUAL_FIELD }} />}
    </div>
  );
}

/** Px; only until a field has been drawn once. */
const USUAL_FIELD = 190;

/** Drawn anew only when something in it changes: of hundreds of fields, one is opened at a time. */
const ListChunk = memo(function ListChunk(props: ChunkProps) {
  const { chunk, groupedBy, open, unfold } = props;
  const { ref, drawn, pictures, height } = useDrawn<HTMLElement>(chunk.always || open !== undefined);
  const name = chunk.title === null ? undefined : groupName(chunk.title, groupedBy);
  if (!drawn)
    return <section ref={ref} style={{ height: height ?? chunk.fields.length * USUAL_FIELD + (chunk.fold ? 60 : 0) }} />;
  return (
    <section ref={ref} aria-label={name}>
      {name !== undefined && <h2 className="week-farm">{name}</h2>}
      {chunk.fields.map((field) => (
        <FieldLines key={field.fieldId} field={field} pictures={pictures} {...props} />
      ))}
      {chunk.fold && <FoldLine fold={chunk.fold} unfold={unfold} />}
    </section>
  );
});

function FieldLines(props: FieldProps) {
  const { field, pictures, scaleOf, wording, open, toggle, on, today, groupedBy } = props;
  const columns = props.columns.map((column) => ({ ...column, cell: field.cells[column.index]! }));
  const away = columns.filter(({ cell }) => cell.advice.verb === 'none' && !isNoHost(cell));
  const reasons = new Map<string | null, string[]>();
  for (const { insect, cell } of away) {
    const reason = shortReason(cell.advice.reason);
    reasons.set(reason, [...(reasons.get(reason) ?? []), localName(insect.commonName)]);
  }
  return (
    <article className="week-lines">
      <h3 className="week-lines-name">
        <FieldName field={field} on={on} groupedBy={groupedBy} />
      </h3>
      {columns
        .filter(({ cell }) => cell.advice.verb !== 'none')
        .map(({ cell, insect, index }) => {
          const isOpen = cellKey(field.fieldId, insect.id) === open;
          return (
            <div key={insect.id}>
              <WeekCellButton
                cell={cell}
                field={field}
                insect={insect}
                pictures={pictures}
                scale={cell.line && scaleOf(index, cell.line)}
                open={isOpen}
                wording={wording}
                toggle={toggle}
                named
              />
              {isOpen && (
                <OpenEvidence field={field} insect={insect} verb={cell.advice.verb} on={on} today={today} toggle={toggle} />
              )}
            </div>
          );
        })}
      {reasons.size > 0 && (
        <p className="week-away">{[...reasons].map(([reason, insects]) => `${reason}: ${insects.join(', ')}`).join(' · ')}</p>
      )}
    </article>
  );
}
