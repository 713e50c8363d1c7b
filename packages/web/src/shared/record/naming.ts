/** Records and their values in words. */
import { type FieldRecord, naturalKey, type ProgramSettings, parseDay, type RecordKind, type Wording } from '@duskwatch/core';
import { dayTextFrom } from '../../format/day.ts';
import type { StoredKind, ValueOf } from '../../sync/types.ts';
import { cropName, stageName } from '../../text/names.ts';
import { labelOf, recordWords } from '../../text/record.ts';
import { namesOfWords } from './listed-words.ts';
import { chosenRuleText } from './rule-text.ts';

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
  if (isOfPlanning(kind)) return `${recordWords.kinds[kind]} ${planningName(kind, key.split('|'), names)}`;
  const parts = key.split('|').flatMap((part, index) => {
    if (kind === 'checks' && index === 2) return part === '1' ? [] : [`${recordWords.labels.checks.visit.label} ${part}`];
    if (parseDay(part) !== null) return [dayTextFrom(part, THIS_YEAR())];
    if (OF_INSECT.has(kind) && index === 1) return [names.wording.insect(part)];
    if (index === 0 && kind !== 'traps' && kind !== 'checks' && kind !== 'lures' && kind !== 'skips')
      return [names.fields.get(part)?.name ?? part];
    if (kind === 'decisions') return [wordOf(names.wording.decision, part)];
    return [part];
  });
  return `${recordWords.kinds[kind]} ${parts.join(', ')}`;
}

/** Kinds whose key names an insect after the field. */
const OF_INSECT: ReadonlySet<StoredKind> = new Set(['samples', 'treatments', 'decisions']);

const PLANNING = ['seasons', 'plans', 'prices', 'stock'] as const satisfies readonly RecordKind[];
type PlanningKind = (typeof PLANNING)[number];
const isOfPlanning = (kind: StoredKind): kind is PlanningKind => (PLANNING as readonly StoredKind[]).includes(kind);

function planningName(kind: PlanningKind, [first = '', second = '', third = '']: readonly string[], names: Names): string {
  switch (kind) {
    case 'plans':
      return `${first}, ${names.wording.insect(second)}, ${areaName(third, names)}`;
    case 'prices':
      return `${wordOf(recordWords.items, first)}${second === 'any' ? '' : `, ${ofName(first, second, names)}`}`;
    default:
      return first;
  }
}

const areaName = (area: string, { fields }: Names): string =>
  area === 'all' ? recordWords.everywhere : (fields.get(area)?.name ?? area);

/** What a price or a package is of: a design, an insect or a name. */
function ofName(item: string, of: string, { wording }: Names): string {
  if (of === 'any') return recordWords.any;
  if (item === 'trap') return wordOf(wording.design, of);
  return item === 'lure' ? wording.insect(of) : of;
}

const wordOf = (words: Readonly<Record<string, string>>, word: string): string => words[word] ?? word;

/** One of a list as people read it. */
function itemText(property: string, each: string, { wording, fields }: Names): string {
  switch (property) {
    case 'informs':
    case 'fields':
      return fields.get(each)?.name ?? each;
    case 'chosenRules':
      return chosenRuleText(each);
    case 'insects':
      return wording.insect(each);
    case 'crops':
      return cropName(each);
    case 'checkWeekdays':
      return wordOf(recordWords.weekdays, each);
    default:
      return each;
  }
}

/** The value of one property as people read it. */
export function propertyText(kind: StoredKind, property: string, value: unknown, record: unknown, names: Names): string {
  const { wording, fields } = names;
  const held = (record ?? {}) as Readonly<Record<string, unknown>>;
  if (value === null || value === undefined || value === '') return recordWords.nothing;
  if (typeof value === 'boolean') return value ? recordWords.yes : recordWords.no;
  if (Array.isArray(value)) {
    if (value.length === 0) return recordWords.nothing;
    if (property === 'rulesOff')
      return (value as NonNullable<ProgramSettings['rulesOff']>)
        .map((off) => `${chosenRuleText(off.ruleId)} (${off.reason})`)
        .join(', ');
    return value.map((each) => itemText(property, String(each), names)).join(', ');
  }
  if (typeof value !== 'string') return String(value);
  if (parseDay(value) !== null) return dayTextFrom(value, THIS_YEAR());
  const listed = kind === 'settings' ? null : namesOfWords(kind, property, wording);
  if (listed !== null) return wordOf(listed, value);
  switch (property) {
    case 'region':
      return wording.region(value);
    case 'insect':
      return wording.insect(value);
    case 'crop':
      return cropName(value);
    case 'stage':
      return stageName(fields.get(String(held.fieldId))?.crop ?? '', value);
    case 'fieldId':
      return kind === 'fields' ? value : (fields.get(value)?.name ?? value);
    case 'of':
      return ofName(String(held.item), value, names);
    case 'area':
      return areaName(value, names);
    case 'photo':
      return value.slice(0, 8);
    default:
      return value;
  }
}

export const propertyLabel = (kind: StoredKind, property: string): string => labelOf(kind, property).label;
