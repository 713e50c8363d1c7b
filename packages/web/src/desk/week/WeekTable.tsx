import type { WeekField, WeekView, Wording } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { type CSSProperties, Fragment, memo, useMemo } from 'react';
import { lineScales } from '../../shared/advice/line-scale.ts';
import { isNoHost } from '../../shared/advice/no-host.ts';
import { words } from '../../text/index.ts';
import { cropName, cropText, localName, stageName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { BareTable } from '../../ui/table/BareTable.tsx';
import { openIn, PORTIONS, type WeekChunk } from './chunks.ts';
import { useDrawn } from './drawing.ts';
import { FoldLine, type Unfold } from './FoldLine.tsx';
import { OpenEvidence } from './LazyEvidence.tsx';
import { cellKey, type WeekColumn, type WeekSelection } from './select.ts';
import { useChunks } from './useChunks.ts';
import { WeekCellButton } from './WeekCell.tsx';

export interface WeekBodyProps {
  readonly view: WeekView;
  readonly selection: WeekSelection;
  readonly on: string | undefined;
  readonly open: string | undefined;
  readonly toggle: (key: string) => void;
  readonly groupedBy: 'farm' | 'crop' | null;
  /** Groups whose folded fields stand among the others. */
  readonly unfolded: ReadonlySet<string>;
  readonly unfold: Unfold;
}

/** What any part of the week is drawn from, in the table and in the list. */
type PartProps = Omit<WeekBodyProps, 'view' | 'selection' | 'unfolded'> & {
  readonly columns: readonly WeekColumn[];
  readonly scaleOf: ReturnType<typeof lineScales>;
  readonly wording: Wording;
  /** The day the page is read on. */
  readonly today: string;
};
export type ChunkProps = PartProps & { readonly chunk: WeekChunk };
export type FieldProps = PartProps & { readonly field: WeekField; readonly pictures: boolean };

export const groupName = (title: string, by: WeekBodyProps['groupedBy']) => (by === 'crop' ? cropName(title) : title);

/** How much room a cell has: its line beside its words, under them, or words under one another too. */
export type CellRoom = 'beside' | 'under' | 'narrow';

/** Fields down, insects across. */
export function WeekTable({ view, selection, open, unfolded, room, ...rest }: WeekBodyProps & { room: CellRoom }) {
  const { columns, groups } = selection;
  const scaleOf = useMemo(() => lineScales(view), [view]);
  const { chunks, toFollow } = useChunks(groups, PORTIONS.wide, unfolded);
  const wording = useWording();
  return (
    <BareTable
      caption={words.week.tableTitle}
      className={`week room-${room}`}
      style={{ '--insects': columns.length } as CSSProperties}
    >
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
        <TableChunk
          key={chunk.key}
          {...{ chunk, columns, scaleOf, wording, today: view.on }}
          open={openIn(chunk, open)}
          {...rest}
        />
      ))}
      {toFollow > 0 && <tbody style={{ height: toFollow * USUAL_ROW }} />}
    </BareTable>
  );
}

/** Px; only until a row has been drawn once. */
const USUAL_ROW = 62;

const usualHeight = ({ title, fields, fold }: WeekChunk): number =>
  fields.length * USUAL_ROW + (title === null ? 0 : 40) + (fold && fields.length > 0 ? 40 : 0);

/** Drawn anew only when something in it changes: of hundreds of fields, one is opened at a time. */
const TableChunk = memo(function TableChunk(props: ChunkProps) {
  const { chunk, columns, groupedBy, open, unfold } = props;
  const { title, fields, fold } = chunk;
  const { ref, drawn, pictures, height } = useDrawn<HTMLTableSectionElement>(chunk.always || open !== undefined);
  if (!drawn) return <tbody ref={ref} style={{ height: height ?? usualHeight(chunk) }} />;
  // A farm that needs nothing is one line with its name.
  const alone = title !== null && fields.length === 0;
  return (
    <tbody ref={ref}>
      {title !== null && (
        <tr className={alone ? 'week-alone' : undefined}>
          <th scope="rowgroup" className="week-group" colSpan={alone ? undefined : columns.length + 1}>
            {groupName(title, groupedBy)}
          </th>
          {alone && fold && (
            <td className="week-fold" colSpan={columns.length}>
              <FoldLine fold={fold} unfold={unfold} />
            </td>
          )}
        </tr>
      )}
      {fields.map((field) => (
        <FieldRow key={field.fieldId} field={field} pictures={pictures} {...props} />
      ))}
      {!alone && fold && (
        <tr>
          <td className="week-fold" colSpan={columns.length + 1}>
            <FoldLine fold={fold} unfold={unfold} />
          </td>
        </tr>
      )}
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
  const { field, pictures, columns, scaleOf, wording, open, toggle, on, today, groupedBy } = props;
  const opened = columns.find(({ insect }) => cellKey(field.fieldId, insect.id) === open);
  return (
    <Fragment>
      <tr className="week-row">
        <th scope="row" className="week-name">
          <FieldName field={field} on={on} groupedBy={groupedBy} />
        </th>
        {columns.map(({ insect, index }) => {
          const cell = field.cells[index]!;
          if (isNoHost(cell))
            return (
              <td key={insect.id} className="no-host">
                <span className="unseen">{words.reason.outOfSeason['not-a-host']}</span>
              </td>
            );
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
              today={today}
              toggle={toggle}
            />
          </td>
        </tr>
      )}
    </Fragment>
  );
}
