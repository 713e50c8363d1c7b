import type { WeekField, WeekView, Wording } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { type CSSProperties, Fragment, memo, useMemo } from 'react';
import { words } from '../../text/index.ts';
import { cropName, cropText, localName, stageName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { BareTable } from '../../ui/table/BareTable.tsx';
import { openIn, PORTIONS, type WeekChunk } from './chunks.ts';
import { useDrawn } from './drawing.ts';
import { OpenEvidence } from './LazyEvidence.tsx';
import { cellKey, lineScales, type WeekColumn, type WeekSelection } from './select.ts';
import { useChunks } from './useChunks.ts';
import { WeekCellButton } from './WeekCell.tsx';

export interface WeekBodyProps {
  readonly view: WeekView;
  readonly selection: WeekSelection;
  readonly on: string | undefined;
  readonly open: string | undefined;
  readonly toggle: (key: string) => void;
  readonly groupedBy: 'farm' | 'crop' | null;
}

/** What any part of the week is drawn from, in the table and in the list. */
type PartProps = Omit<WeekBodyProps, 'view' | 'selection'> & {
  readonly columns: readonly WeekColumn[];
  readonly scaleOf: ReturnType<typeof lineScales>;
  readonly wording: Wording;
};
export type ChunkProps = PartProps & { readonly chunk: WeekChunk };
export type FieldProps = PartProps & { readonly field: WeekField; readonly pictures: boolean };

export const groupName = (title: string, by: WeekBodyProps['groupedBy']) => (by === 'crop' ? cropName(title) : title);

/** Fields down, insects across. */
export function WeekTable({ view, selection, open, ...rest }: WeekBodyProps) {
  const { columns, groups } = selection;
  const scaleOf = useMemo(() => lineScales(view), [view]);
  const { chunks, toFollow } = useChunks(groups, PORTIONS.wide);
  const wording = useWording();
  return (
    <BareTable caption={words.week.tableTitle} className="week" style={{ '--insects': columns.length } as CSSProperties}>
      <thead>
        <tr>
          <th scope="col" className="week-corner">
            {words.week.field}
          </th>
          {columns.map(({ insect }) => (
            <th scope="col" key={insect.id} className="week-column">
              {localName(insect.commonName)}
              <i>{insect.scientificName}</i>
            </th>
          ))}
        </tr>
      </thead>
      {chunks.map((chunk) => (
        <TableChunk key={chunk.key} {...{ chunk, columns, scaleOf, wording }} open={openIn(chunk, open)} {...rest} />
      ))}
      {toFollow > 0 && <tbody style={{ height: toFollow * USUAL_ROW }} />}
    </BareTable>
  );
}

/** Px; only until a row has been drawn once. */
const USUAL_ROW = 89;

/** Drawn anew only when something in it changes: of hundreds of fields, one is opened at a time. */
const TableChunk = memo(function TableChunk(props: ChunkProps) {
  const { chunk, columns, groupedBy, open } = props;
  const { ref, drawn, pictures, height } = useDrawn<HTMLTableSectionElement>(chunk.always || open !== undefined);
  if (!drawn) return <tbody ref={ref} style={{ height: height ?? chunk.fields.length * USUAL_ROW }} />;
  return (
    <tbody ref={ref}>
      {chunk.title !== null && (
        <tr>
          <th scope="rowgroup" className="week-group" colSpan={columns.length + 1}>
            {groupName(chunk.title, groupedBy)}
          </th>
        </tr>
      )}
      {chunk.fields.map((field) => (
        <FieldRow key={field.fieldId} field={field} pictures={pictures} {...props} />
      ))}
    </tbody>
  );
});

/** A field's name as the way to its page, and what stands in it. */
export function FieldName({ field, on, groupedBy }: Pick<WeekBodyProps, 'on' | 'groupedBy'> & { field: WeekField }) {
  const stage = field.stage ? stageName(field.crop, field.stage.stage) : words.week.stageUnknown;
  return (
    <>
      <Link to="/fields/$fieldId" params={{ fieldId: field.fieldId }} search={{ on }}>
        {field.name}
      </Link>
      <span className="week-note">
        {groupedBy === 'farm' ? '' : `${field.farm} · `}
        {cropText(field)} · {stage}
      </span>
    </>
  );
}

function FieldRow(props: FieldProps) {
  const { field, pictures, columns, scaleOf, wording, open, toggle, on, groupedBy } = props;
  const opened = columns.find(({ insect }) => cellKey(field.fieldId, insect.id) === open);
  return (
    <Fragment>
      <tr className="week-row">
        <th scope="row" className="week-name">
          <FieldName field={field} on={on} groupedBy={groupedBy} />
        </th>
        {columns.map(({ insect, index }) => {
          const cell = field.cells[index]!;
          return (
            <td key={insect.id}>
              <WeekCellButton
                cell={cell}
                field={field}
                insect={insect}
                pictures={pictures}
                scale={cell.line && scaleOf(index, cell.line)}
                open={opened?.index === index}
                wording={wording}
                toggle={toggle}
              />
            </td>
          );
        })}
      </tr>
      {opened && (
        <tr className="week-evidence">
          <td colSpan={columns.length + 1}>
            <OpenEvidence
              field={field}
              insect={opened.insect}
              verb={field.cells[opened.index]!.advice.verb}
              on={on}
              toggle={toggle}
            />
          </td>
        </tr>
      )}
    </Fragment>
  );
}
