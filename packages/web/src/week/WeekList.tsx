import type { WeekField } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { cropText, localName, shortReason } from '../words/names.ts';
import { OpenEvidence } from './OpenEvidence.tsx';
import { cellKey, lineScales } from './select.ts';
import { WeekCellButton } from './WeekCell.tsx';
import { groupName, stageText, type WeekBodyProps } from './WeekTable.tsx';

/** The same week for a narrow page: a field, and a line to an insect. */
export function WeekList(props: WeekBodyProps) {
  const { selection, view, groupedBy } = props;
  const scaleOf = lineScales(view);
  return (
    <div className="week-list">
      {selection.groups.map((group) => (
        <section key={group.title ?? ''} aria-label={group.title ?? undefined}>
          {group.title !== null && <h2 className="week-farm">{groupName(group.title, groupedBy)}</h2>}
          {group.fields.map((field) => (
            <FieldLines key={field.fieldId} field={field} scaleOf={scaleOf} {...props} />
          ))}
        </section>
      ))}
    </div>
  );
}

function FieldLines(props: WeekBodyProps & { field: WeekField; scaleOf: ReturnType<typeof lineScales> }) {
  const { field, scaleOf, selection, open, toggle, on, groupedBy } = props;
  const columns = selection.columns.map((column) => ({ ...column, cell: field.cells[column.index]! }));
  const away = columns.filter(({ cell }) => cell.advice.verb === 'none');
  const reasons = new Map<string | null, string[]>();
  for (const { insect, cell } of away) {
    const reason = shortReason(cell.advice);
    reasons.set(reason, [...(reasons.get(reason) ?? []), localName(insect.commonName)]);
  }
  return (
    <article className="week-lines">
      <h3 className="week-lines-name">
        <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }}>
          {field.name}
        </Link>
        <span className="week-note">
          {groupedBy === 'farm' ? '' : `${field.farm} · `}
          {cropText(field)} · {stageText(field)}
        </span>
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
                scale={cell.line && scaleOf(index, cell.line)}
                open={isOpen}
                toggle={toggle}
                named
              />
              {isOpen && <OpenEvidence field={field} insect={insect} advice={cell.advice} on={on} toggle={toggle} />}
            </div>
          );
        })}
      {reasons.size > 0 && (
        <p className="week-away">{[...reasons].map(([reason, insects]) => `${reason}: ${insects.join(', ')}`).join(' · ')}</p>
      )}
    </article>
  );
}
