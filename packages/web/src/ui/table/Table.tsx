import { type ReactNode, useMemo, useState } from 'react';
import { Scroll } from '../Scroll.tsx';
import { BareTable } from './BareTable.tsx';
import { asCsv, asText, type CellValue, nextSort, type Sort, sorted } from './cells.ts';
import { TakeAlong } from './TakeAlong.tsx';

export interface Column<R> {
  readonly head: string;
  /** What the cell holds, to sort by and to take along. Without it, and without `said`, the column is an act. */
  readonly value?: (row: R) => CellValue;
  /** The same in words, where what it holds means nothing to a reader; these are taken along in its place. */
  readonly said?: (row: R) => string | null;
  /** A figure and how people read it, a dash where there is none: `value`, `cell` and `number` at once. */
  readonly figure?: readonly [value: (row: R) => number | null, text: (value: number) => string];
  /** What the cell shows; absent: what it says or holds. `before`: the row above it, as the table stands. */
  readonly cell?: (row: R, before: R | undefined) => ReactNode;
  readonly number?: boolean;
  /** The cell names its row. */
  readonly names?: boolean;
  /** The head is for those who hear it: what stands below explains itself. */
  readonly unseen?: boolean;
  /** Drawn in the head under its name, such as the axis of the pictures below. */
  readonly below?: ReactNode;
  readonly className?: string | ((row: R) => string | undefined);
}

export interface TableProps<R> {
  /** What the table is of: its caption, and its name among others of the page. */
  readonly label: string;
  readonly columns: readonly Column<R>[];
  readonly rows: readonly R[];
  readonly keyOf: (row: R, index: number) => string | number;
  /** `part`: some lines of it in sight; `page`: as high as the window; `whole`: as long as it is. */
  readonly height?: 'part' | 'page' | 'whole';
  /** How it stands, where the address says it; else the table keeps it. The rows come sorted. */
  readonly stands?: { readonly sort: Sort | null; readonly change: (sort: Sort) => void };
  /** Few rows in an order that means something. */
  readonly fixed?: boolean;
  /** False where the page offers that itself, or where there is nothing to take. */
  readonly takeAlong?: boolean;
  /** Which group a row belongs to. Groups stand in the order in which the rows come; sorting moves rows within them. */
  readonly groupOf?: (row: R) => string;
  /** What stands over a group. */
  readonly groupHead?: (group: string, rows: readonly R[]) => ReactNode;
  /** Rows of a group stay behind a button that says this, until it is pressed; null: they stand. */
  readonly foldOf?: (group: string, rows: readonly R[]) => string | null;
  readonly className?: string;
  readonly rowClass?: (row: R, before: R | undefined) => string | undefined;
}

/**
 * Rows of one kind under named columns: it scrolls by itself under a head that stays, stands by any column that holds
 * something, and can be copied or saved as it stands.
 */
export function Table<R>(props: TableProps<R>) {
  const {
    label,
    rows,
    height = 'whole',
    stands,
    fixed = false,
    takeAlong = true,
    className,
    rowClass,
    groupOf,
    groupHead,
    foldOf,
  } = props;
  const [unfolded, setUnfolded] = useState<ReadonlySet<string>>(new Set());
  const columns = useMemo(() => props.columns.map(whole), [props.columns]);
  const [own, setOwn] = useState<Sort | null>(null);
  const sort = stands ? stands.sort : own;
  const shown = useMemo(() => {
    const column = own && columns[own.by];
    const by = column?.value ?? column?.said;
    return own && by ? sorted(rows, by, own.down) : rows;
  }, [rows, columns, own]);
  const groups = useMemo(() => grouped(rows, shown, groupOf), [rows, shown, groupOf]);
  const held = columns.filter(holds);
  const cells = () => shown.map((row) => held.map(({ said, value }) => (said ?? value)!(row)));
  const press = (by: number) => {
    const next = nextSort(sort, by, columns[by]!.number === true);
    if (!stands) setOwn(next);
    else stands.change(next ?? { by, down: !sort!.down });
  };
  return (
    <div className="table-frame">
      <Scroll label={label} className={`high-${height}`}>
        <BareTable caption={label} className={className ? `figures ${className}` : 'figures'}>
          <thead>
            <tr>
              {columns.map((column, place) => (
                <Head
                  key={column.head}
                  column={column}
                  sort={sort?.by === place ? sort : null}
                  {...(fixed || !holds(column) ? {} : { press: () => press(place) })}
                />
              ))}
            </tr>
          </thead>
          {groups.map(([group, members]) => {
            const fold = unfolded.has(group) ? null : (foldOf?.(group, members) ?? null);
            return (
              <tbody key={group}>
                {groupHead && (
                  <tr className="group-head">
                    <th colSpan={columns.length} scope="rowgroup">
                      {groupHead(group, members)}
                    </th>
                  </tr>
                )}
                {fold !== null && (
                  <tr>
                    <td colSpan={columns.length}>
                      <button type="button" className="plain-button" onClick={() => setUnfolded(new Set([...unfolded, group]))}>
                        {fold}
                      </button>
                    </td>
                  </tr>
                )}
                {(fold === null ? members : []).map((row, index) => (
                  <tr key={props.keyOf(row, index)} className={rowClass?.(row, members[index - 1])}>
                    {columns.map((column) => (
                      <Cell key={column.head} column={column} row={row} before={members[index - 1]} />
                    ))}
                  </tr>
                ))}
              </tbody>
            );
          })}
        </BareTable>
      </Scroll>
      {takeAlong && held.length > 0 && rows.length > 0 && (
        <TakeAlong
          label={label}
          text={() => asText(cells())}
          csv={() =>
            asCsv(
              held.map(({ head }) => head),
              cells(),
            )
          }
        />
      )}
    </div>
  );
}

/** All rows as one group without a name, where none is asked for: so an empty table still has its body. */
function grouped<R>(
  rows: readonly R[],
  shown: readonly R[],
  groupOf: ((row: R) => string) | undefined,
): (readonly [string, readonly R[]])[] {
  if (!groupOf) return [['', shown]];
  const order = [...new Set(rows.map(groupOf))];
  return order.map((group) => [group, shown.filter((row) => groupOf(row) === group)] as const);
}

const holds = <R,>({ value, said }: Column<R>): boolean => (value ?? said) !== undefined;

const NONE = '–';

/** A column of figures, spelled out. */
const whole = <R,>({ figure, ...column }: Column<R>): Column<R> => {
  if (!figure) return column;
  const [value, text] = figure;
  const cell = (row: R) => {
    const held = value(row);
    return held === null ? NONE : text(held);
  };
  return { number: true, value, cell, ...column };
};

const classOf = (...names: readonly (string | false | undefined)[]) => names.filter(Boolean).join(' ') || undefined;

function Head<R>({ column, sort, press }: { column: Column<R>; sort: Sort | null; press?: () => void }) {
  const { head, number, unseen, below, className } = column;
  return (
    <th
      scope="col"
      className={classOf(number && 'number', typeof className === 'string' && className)}
      aria-sort={sort ? (sort.down ? 'descending' : 'ascending') : undefined}
    >
      {press ? (
        <button type="button" className="sort" onClick={press}>
          {head}
        </button>
      ) : unseen ? (
        <span className="unseen">{head}</span>
      ) : (
        head
      )}
      {below}
    </th>
  );
}

function Cell<R>({ column, row, before }: { column: Column<R>; row: R; before: R | undefined }) {
  const { head, number, names, cell, said: words, value, className } = column;
  const classes = classOf(number && 'number', typeof className === 'function' ? className(row) : className);
  const said = cell ? cell(row, before) : (words ?? value)?.(row);
  return names ? (
    <th scope="row" className={classes}>
      {said}
    </th>
  ) : (
    <td className={classes} data-label={head}>
      {said}
    </td>
  );
}
