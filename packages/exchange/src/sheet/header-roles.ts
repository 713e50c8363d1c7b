import type { ColumnRole } from '@duskwatch/core';
import { plainHeader } from '../table/match-header.ts';

/** Words that head a column of each kind. */
const WORDS: Readonly<Record<ColumnRole, readonly string[]>> = {
  trap: ['trap', 'trap_id', 'trap_no', 'trap_number', 'trap_name', 'trap_#', 'trampa'],
  station: ['station', 'site', 'location', 'place', 'estación', 'sitio'],
  day: ['date', 'day', 'checked', 'checked_on', 'check_date', 'date_checked', 'visit', 'fecha'],
  count: ['count', 'moths', 'catch', 'moth_count', 'target_count', 'no._of_moths', 'moths_caught', 'number', 'males', 'polillas'],
  otherCount: ['other', 'others', 'other_count', 'other_moths', 'other_species'],
  condition: ['condition', 'trap_condition', 'state'],
  note: ['note', 'notes', 'comment', 'comments', 'remarks', 'notas'],
  insect: ['insect', 'species', 'pest', 'moth', 'insecto', 'plaga'],
  design: ['design', 'trap_design', 'trap_type', 'type'],
  field: ['field', 'field_id', 'field_name', 'block', 'campo'],
  farm: ['farm', 'grower', 'producer', 'finca'],
  crop: ['crop', 'cultivo'],
  hungOn: ['hung', 'hung_on', 'date_hung', 'set_out', 'date_set', 'deployed'],
};

export function roleOf(header: string): ColumnRole | null {
  const plain = plainHeader(header);
  const found = Object.entries(WORDS).find(([, words]) => words.includes(plain));
  return found === undefined ? null : (found[0] as ColumnRole);
}

/** Totals and means are worked out from counts; they are no trap and no day. */
export const isSummary = (label: string): boolean =>
  /^(grand )?(total|sum|mean|average|avg|max|min|promedio|suma)\b/i.test(label.trim());
