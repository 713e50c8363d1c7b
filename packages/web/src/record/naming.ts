/** Records and their values in words. */
import { type FieldRecord, naturalKey, parseDay, type RecordKind, type Wording } from '@duskwatch/core';
import { dayTextFrom } from '../format/day.ts';
import type { StoredKind, ValueOf } from '../sync/types.ts';
import { cropName, stageName } from '../words/names.ts';
import { recordWords } from '../words/record.ts';

export const keyOfValue = (kind: StoredKind, value: ValueOf<StoredKind>): string =>
  kind === 'settings' ? kind : naturalKey[kind as RecordKind](value as never);

export interface Names {
  readonly wording: Wording;
  readonly fields: ReadonlyMap<string, FieldRecord>;
}

const THIS_YEAR = () => new Date().toISOString().slice(0, 10);

/** `check QU1-HZ-26, Mon 13 July`. */
export function recordName(kind: StoredKind, key: string, names: Names): string {
  if (kind === 'settings') return recordWords.kinds.settings;
  const parts = key.split('|').flatMap((part, index) => {
    if (kind === 'checks' && index === 2) return part === '1' ? [] : [`${recordWords.labels.checks.visit!.label} ${part}`];
    if (parseDay(part) !== null) return [dayTextFrom(part, THIS_YEAR())];
    if ((kind === 'samples' || kind === 'treatments') && index === 1) return [names.wording.insect(part)];
    if (index === 0 && kind !== 'traps' && kind !== 'checks' && kind !== 'lures') return [names.fields.get(part)?.name ?? part];
    return [part];
  });
  return `${recordWords.kinds[kind]} ${parts.join(', ')}`;
}

/** The value of one property as people read it. */
export function propertyText(kind: StoredKind, property: string, value: unknown, record: unknown, names: Names): string {
  const { wording, fields } = names;
  const held = (record ?? {}) as Readonly<Record<string, unknown>>;
  if (value === null || value === undefined || value === '') return recordWords.nothing;
  if (typeof value === 'boolean') return value ? recordWords.yes : recordWords.no;
  if (Array.isArray(value)) {
    if (value.length === 0) return recordWords.nothing;
    return value
      .map((each) => (property === 'informs' ? (fields.get(String(each))?.name ?? String(each)) : String(each)))
      .join(', ');
  }
  if (typeof value !== 'string') return String(value);
  if (parseDay(value) !== null) return dayTextFrom(value, THIS_YEAR());
  switch (property) {
    case 'insect':
      return wording.insect(value);
    case 'design':
      return wording.design[value as keyof typeof wording.design] ?? value;
    case 'condition':
      return wording.condition[value as keyof typeof wording.condition] ?? value;
    case 'crop':
      return cropName(value);
    case 'stage':
      return stageName(fields.get(String(held.fieldId))?.crop ?? '', value);
    case 'fieldId':
      return kind === 'fields' ? value : (fields.get(value)?.name ?? value);
    case 'photo':
      return value.slice(0, 8);
    default:
      return value;
  }
}

export const propertyLabel = (kind: StoredKind, property: string): string =>
  kind === 'settings' ? property : (recordWords.labels[kind][property]?.label ?? property);
