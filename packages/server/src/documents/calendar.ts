/** The calendar as text (RFC 5545). */
import { createHash } from 'node:crypto';
import {
  addDays,
  type CalendarEntry,
  day,
  type FieldRecord,
  formatDay,
  type IsoDay,
  insectById,
  type Language,
  type Program,
} from '@duskwatch/core';
import type { SentEntries, SentEntry } from '@duskwatch/store';
import icalendar, { ICalEventTransparency } from 'ical-generator';
import { calendarWords } from './calendar-words.ts';

export interface CalendarRequest {
  readonly program: Pick<Program, 'settings' | 'fields'>;
  readonly entries: readonly CalendarEntry[];
  readonly language: Language;
  /** Where the app is reached, for links; null: no links. */
  readonly origin: string | null;
  /** How the entries stood when they were last sent. */
  readonly sent: SentEntries;
  /** ISO 8601, in UTC. */
  readonly now: string;
}

interface SaidEntry {
  readonly uid: string;
  readonly on: IsoDay;
  readonly summary: string;
  readonly description: string;
  readonly url: string | null;
}

/** How often a calendar should ask again (RFC 7986, section 5.7). */
const REFRESH_S = 6 * 3_600;
/** An entry that is gone is remembered so long: should it come back, its sequence goes on. */
const REMEMBERED_MS = 400 * 86_400_000;

/** The calendar, and how its entries now stand. Without a change since `sent` both are as they were. */
export function calendarOf(request: CalendarRequest): { readonly text: string; readonly sent: SentEntries } {
  const { program, entries, language, now } = request;
  const { name, invented } = program.settings;
  const said = entries.map((entry) => say(entry, request));
  const sent = standing(said, request.sent, now);
  const calendar = icalendar({
    prodId: { company: 'Duskwatch', product: 'Duskwatch', language: language.toUpperCase() },
    name: plain(calendarWords[language].name(name, invented)),
    ttl: REFRESH_S,
  });
  for (const { uid, on, summary, description, url } of said) {
    const { sequence, changedAt } = sent[uid]!;
    calendar.createEvent({
      id: uid,
      sequence,
      // Without a method, a stamp is the instant of the last change (RFC 5545, section 3.8.7.2).
      stamp: new Date(changedAt),
      lastModified: new Date(changedAt),
      start: utc(on),
      end: utc(formatDay(addDays(day(on), 1))),
      allDay: true,
      summary,
      description,
      transparency: ICalEventTransparency.TRANSPARENT,
      ...(url && { url }),
    });
  }
  return { text: calendar.toString(), sent };
}

/** What has changed since it was last sent gets the next sequence and this instant; the rest keeps its own. */
function standing(said: readonly SaidEntry[], before: SentEntries, now: string): SentEntries {
  const after: Record<string, SentEntry> = {};
  for (const { uid, ...content } of said) {
    const digest = createHash('sha256').update(JSON.stringify(content)).digest('base64url').slice(0, 16);
    const last = before[uid];
    const same = last !== undefined && last.digest === digest && !last.gone;
    after[uid] = same ? last : { digest, sequence: last ? last.sequence + 1 : 0, changedAt: now, gone: false };
  }
  for (const [uid, last] of Object.entries(before)) {
    if (uid in after || Date.parse(now) - Date.parse(last.changedAt) > REMEMBERED_MS) continue;
    after[uid] = last.gone ? last : { ...last, changedAt: now, gone: true };
  }
  return after;
}

function say(entry: CalendarEntry, { program, language, origin }: CalendarRequest): SaidEntry {
  const w = calendarWords[language];
  const fieldsById = new Map(program.fields.map((field) => [field.fieldId, field]));
  const fields = entry.fields.map((id) => fieldsById.get(id)).filter((field) => field !== undefined);
  const insects = entry.insects.map((id) => insectById(id)?.commonName[language] ?? id.replaceAll('-', ' ')).join(', ');
  const place = placeOf(entry, fields) ?? w.everywhere;
  const traps = entry.trapIds.join(', ');
  const summary = w.summary[entry.kind]({ place, insects, traps, quantity: entry.quantity });
  const lines = [
    insects && w.insects(insects),
    traps && w.traps(traps),
    fields.length > 0 && w.fields(fields.map(({ name }) => name).join(', ')),
    entry.farm !== null && w.farm(entry.farm),
    w.caution[entry.kind],
  ];
  return {
    uid: `${entry.uid}@${programId(program)}`,
    on: entry.on,
    summary: plain(entry.overdue ? w.overdue(summary) : summary),
    description: lines
      .filter((line) => typeof line === 'string' && line !== '')
      .map((line) => plain(String(line)))
      .join('\n'),
    url: origin === null ? null : origin + pageOf(entry),
  };
}

function placeOf({ kind, station, farm }: CalendarEntry, fields: readonly FieldRecord[]): string | null {
  if (station !== null) return station;
  if ((kind === 'scout' || kind === 'decide') && fields.length > 0) return fields.map(({ name }) => name).join(', ');
  return farm;
}

function pageOf({ kind, trapIds, fields }: CalendarEntry): string {
  if (kind === 'check') return '/round';
  if (kind === 'change-lure' && trapIds.length === 1) return `/traps/${encodeURIComponent(trapIds[0]!)}`;
  if ((kind === 'scout' || kind === 'decide') && fields[0] !== undefined) return `/fields/${encodeURIComponent(fields[0])}`;
  return '/';
}

/** Keeps entries of programs apart in one calendar. */
const programId = ({ settings }: CalendarRequest['program']): string =>
  `${createHash('sha256').update(settings.name).digest('hex').slice(0, 16)}.duskwatch`;

/** Content lines hold no control characters (RFC 5545, section 3.1). */
const plain = (text: string): string => text.replace(/\p{Cc}+/gu, ' ');

const utc = (on: IsoDay): Date => new Date(`${on}T00:00:00Z`);
