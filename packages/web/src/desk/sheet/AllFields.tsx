import { daysLateOn, groupBy, type IsoDay, type WeekCell, type WeekField, type WeekView } from '@duskwatch/core';
import { shortDay } from '../../format/day.ts';
import { rateText } from '../../format/number.ts';
import { lineScales } from '../../shared/advice/line-scale.ts';
import { isNoHost } from '../../shared/advice/no-host.ts';
import { Sparkline } from '../../shared/advice/Sparkline.tsx';
import { cropName, shortInsect, shortReason, stageName } from '../../text/names.ts';
import { weekSheetWords as w } from '../../text/week-sheet.ts';
import { useWording } from '../../text/wording.ts';

/** Columns that a sheet of paper has room for; more insects stand in further tables. */
const INSECTS_ACROSS = 5;

/** The second sheet: every field with its verbs, the farm named once, a season's line beside each rate. */
export function AllFields({ view }: { view: WeekView }) {
  const farms = [...groupBy(view.fields, ({ farm }) => farm)];
  const insects = view.insects.map((insect, index) => ({ insect, index }));
  const tables = Array.from({ length: Math.ceil(insects.length / INSECTS_ACROSS) }, (_, nth) =>
    insects.slice(nth * INSECTS_ACROSS, (nth + 1) * INSECTS_ACROSS),
  );
  const scaleOf = lineScales(view);
  return (
    <>
      {tables.map((columns) => (
        <table key={columns[0]!.insect.id} className="sheet-grid">
          <thead>
            <tr>
              <th scope="col">{w.farm}</th>
              <th scope="col">{w.field}</th>
              {columns.map(({ insect }) => (
                <th key={insect.id} scope="col">
                  {shortInsect(insect.id)}
                </th>
              ))}
            </tr>
          </thead>
          {farms.map(([farm, fields]) => (
            <tbody key={farm}>
              {fields.map((field, nth) => (
                <tr key={field.fieldId}>
                  {nth === 0 && (
                    <th scope="rowgroup" rowSpan={fields.length} className="sheet-farm">
                      {farm}
                    </th>
                  )}
                  <th scope="row">
                    {field.name}
                    <small>{cropAndStage(field)}</small>
                  </th>
                  {columns.map(({ insect, index }) => (
                    <Cell key={insect.id} cell={field.cells[index]!} index={index} scaleOf={scaleOf} on={view.on} />
                  ))}
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      ))}
    </>
  );
}

const cropAndStage = (field: WeekField): string =>
  field.stage ? `${cropName(field.crop)}, ${stageName(field.crop, field.stage.stage)}` : cropName(field.crop);

interface CellProps {
  readonly cell: WeekCell;
  readonly index: number;
  readonly scaleOf: ReturnType<typeof lineScales>;
  readonly on: IsoDay;
}

function Cell({ cell, index, scaleOf, on }: CellProps) {
  const wording = useWording();
  const { advice, line } = cell;
  if (isNoHost(cell)) return <td />;
  if (advice.verb === 'none') return <td className="sheet-away">– {shortReason(advice.reason)}</td>;
  const days = daysLateOn(on, advice.dueSince);
  return (
    <td className={`sheet-${advice.verb}`}>
      <p>
        <b className="sheet-verb">{wording.verb[advice.verb]}</b>{' '}
        <span>{days > 0 ? <em>{w.late(days)}</em> : advice.by && shortDay(advice.by)}</span>
      </p>
      <p>
        <small>
          {advice.verb === 'blind' ? shortReason(advice.reason) : advice.rate !== null && `${rateText(advice.rate)} ${w.aNight}`}
        </small>
        {line && <Sparkline line={line} scale={scaleOf(index, line)} />}
      </p>
    </td>
  );
}
