/**
 * Why a trap was unfit stood at the head of its note, in the scout's language; it becomes a property of the check.
 * Replaces within the JSON as `toJson` writes it: a quotation mark inside a note is escaped there, so that no note can
 * be taken for a property.
 */
import { TOLD_REASONS } from '@duskwatch/core';

export function reasonsOutOfNotes(): string[] {
  const moved = TOLD_REASONS.reduce((value, [told, reason]) => {
    const alone = replaced(value, `"note":"${told}"`, `"unfitReason":"${reason}","note":null`);
    return replaced(alone, `"note":"${told}. `, `"unfitReason":"${reason}","note":"`);
  }, 'value');
  return [`update revisions set value = ${moved} where kind = 'checks' and value like '%"condition":"unfit"%'`];
}

const replaced = (value: string, from: string, to: string) => `replace(${value}, '${from}', '${to}')`;
