import type { WeekCell as Cell, InsectName, WeekField, Wording } from '@duskwatch/core';
import type { LineScale } from '../../shared/advice/line-scale.ts';
import { Sparkline, SparkPlace } from '../../shared/advice/Sparkline.tsx';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { localName, shortReason } from '../../text/names.ts';
import { domId } from '../../ui/dom-id.ts';
import { cellKey } from './select.ts';

export interface CellProps {
  readonly cell: Cell;
  readonly field: WeekField;
  readonly insect: InsectName;
  /** Null when the cell has no line. */
  readonly scale: LineScale | null;
  /** False leaves the line's place empty. */
  readonly pictures: boolean;
  readonly open: boolean;
  readonly wording: Wording;
  readonly toggle: (key: string) => void;
}

export const panelId = (field: string, insect: string) => domId('evidence', field, insect);

/** A verb, its date, its rate and its season: one button, and one click to the evidence. */
export function WeekCellButton({
  cell,
  field,
  insect,
  scale,
  pictures,
  open,
  wording,
  toggle,
  named = false,
}: CellProps & { named?: boolean }) {
  const { advice, line } = cell;
  const away = advice.verb === 'none';
  return (
    <button
      type="button"
      className={`cell verb-${advice.verb}${named ? ' cell-line' : ''}`}
      aria-expanded={open}
      aria-controls={open ? panelId(field.fieldId, insect.id) : undefined}
      onClick={() => toggle(cellKey(field.fieldId, insect.id))}
    >
      <span className="cell-words">
        {named && <span className="cell-insect">{localName(insect.commonName)}</span>}
        <span className="cell-verb">
          {!away && <VerbMark verb={advice.verb} />}
          <b className="verb-word">{away ? '—' : wording.verb[advice.verb]}</b>{' '}
          <span className="cell-when">{away ? shortReason(advice.reason) : wording.when(advice)}</span>
        </span>
        <span className="cell-rate">
          {[advice.verb === 'blind' && shortReason(advice.reason), wording.rate(advice)].filter(Boolean).join(' · ')}
        </span>
      </span>
      {line && scale && (pictures ? <Sparkline line={line} scale={scale} /> : <SparkPlace />)}
    </button>
  );
}
