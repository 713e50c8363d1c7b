/** Days of weather that a program fetches by itself: when, from where, and what became of it. */
import {
  addDays,
  day,
  formatDay,
  type IsoDay,
  isForecast,
  isOutside,
  lackingToFetch,
  type Problem,
  type Result,
  refuse,
  type SourceRecord,
  WEATHER_SERVICES,
  type WeatherRecord,
  weatherServices,
} from '@duskwatch/core';
import { addressFor, askService, isOpenService, type OpenService, readOwnTable } from '@duskwatch/exchange';
import type { FetchState, FetchTrouble, Store } from '@duskwatch/store';
import { dayInZone } from '../clock.ts';
import type { ProgramReader } from '../reader.ts';
import { type Answered, askAddress, type Validators } from './transport.ts';
import { newFiles } from './watched-folder.ts';

export interface FetcherOptions {
  readonly store: Pick<Store, 'fetches' | 'current' | 'history' | 'importProgram'>;
  readonly reader: Pick<ProgramReader, 'everything'>;
  readonly now: () => number;
  readonly inTurn: <T>(work: () => Promise<T>) => Promise<T>;
  /** Where files are put to be read. */
  readonly folder: string;
  /** Who asks, as services want to know. */
  readonly agent: string;
  /** Whoever sits at the machine may ask what it reaches; of a program that people share, only the world outside is asked. */
  readonly mayAskOwnNetwork: boolean;
  /** Other origins of services: for tests. */
  readonly origins?: { readonly [S in OpenService]?: string };
  readonly patienceMs?: number;
}

export interface WeatherFetcher {
  /** Where files are put to be read. */
  readonly folder: string;
  states(): Promise<FetchState[]>;
  /** Fetches the days of one source, unless its service asks for patience. */
  fetchNow(sourceId: string): Promise<Result<FetchState>>;
  /** Fetches whatever is due, one source after another. */
  fetchDue(stopping?: AbortSignal): Promise<void>;
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** After a failure: a quarter of an hour, then twice as long each time, a day at most. */
const FIRST_WAIT_MS = 15 * MINUTE_MS;
const LONGEST_WAIT_MS = 24 * HOUR_MS;
/** What a service may ask for at most before it is tried again all the same. */
const LONGEST_ASKED_MS = 7 * LONGEST_WAIT_MS;
/** Days that are asked for again: measured figures are put right for some days afterwards. Common practice, no source. */
const LOOKED_BACK_DAYS = 14;
/** Years of a station that are asked for at first: what is to come is expected from past years. */
const YEARS_AT_FIRST = 10;
const PATIENCE_MS = 30_000;

export function weatherFetcher(options: FetcherOptions): WeatherFetcher {
  const { store, reader, now } = options;
  const running = new Map<string, Promise<Result<FetchState>>>();

  function fetchOnce(source: SourceRecord, before: FetchState | null, stopping?: AbortSignal): Promise<Result<FetchState>> {
    const held = running.get(source.sourceId);
    if (held) return held;
    const fetching = attempt({ ...options, ...(stopping && { stopping }) }, source, before).finally(() =>
      running.delete(source.sourceId),
    );
    running.set(source.sourceId, fetching);
    return fetching;
  }

  const stateOf = async (sourceId: string) => (await store.fetches.list()).find((state) => state.sourceId === sourceId) ?? null;

  return {
    folder: options.folder,
    states: () => store.fetches.list(),
    async fetchNow(sourceId) {
      const { settings, sources } = await reader.everything();
      const source = sources.find((each) => each.sourceId === sourceId);
      const fault = settings.invented ? inventedPlace : source === undefined ? unknownSource(sourceId) : notReady(source);
      if (fault !== null) return refuse(fault);
      const before = await stateOf(sourceId);
      if (before?.mustWait && isOutside(source!.service!) && isWaiting(before, now())) return refuse(tooSoon(before));
      return fetchOnce(source!, before);
    },
    async fetchDue(stopping) {
      const { settings, sources } = await reader.everything();
      if (settings.invented) return;
      for (const source of sources) {
        if (stopping?.aborted) return;
        if (!source.fetching || notReady(source) !== null) continue;
        const before = await stateOf(source.sourceId);
        if (before === null || !isWaiting(before, now())) await fetchOnce(source, before, stopping);
      }
    },
  };
}

/** A state from the future was written by a clock that went wrong, and holds nobody up. */
const isWaiting = ({ triedAt, nextAt }: FetchState, now: number): boolean =>
  Date.parse(triedAt) <= now && Date.parse(nextAt) > now;

const notReady = (source: SourceRecord): Problem | null => {
  const lacking = lackingToFetch({ ...source, fetching: true });
  return lacking === null
    ? null
    : {
        where: { column: lacking },
        got: 'nothing',
        expected: `what ${source.service ?? 'a service'} has to be asked with`,
        fix: 'Fill it in, or set fetching to no.',
        fault: { kind: 'source-lacks', column: lacking },
      };
};

interface Attempt extends FetcherOptions {
  /** The server ends: what is asked is given up, and nothing is noted of it. */
  readonly stopping?: AbortSignal;
}

async function attempt(options: Attempt, source: SourceRecord, before: FetchState | null): Promise<Result<FetchState>> {
  const { store, now } = options;
  const at = now();
  const service = source.service!;
  const told = weatherServices[service];
  const gone = await days(options, source, before).catch((error: Error) => inVain('storage', error.message));
  options.stopping?.throwIfAborted();
  const done = { sourceId: source.sourceId, triedAt: instant(at) };
  let state: FetchState;
  if (gone.kind === 'trouble') {
    const failures = (before?.failures ?? 0) + 1;
    const usual = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(failures - 1, 10));
    const asked = Math.min(LONGEST_ASKED_MS, (gone.waitS ?? 0) * 1000);
    state = {
      ...done,
      answeredAt: before?.answeredAt ?? null,
      nextAt: instant(at + Math.max(usual, asked)),
      mustWait: gone.waitS !== undefined && gone.waitS !== null,
      failures,
      trouble: gone.trouble,
      days: before?.days ?? 0,
      validators: before?.validators ?? {},
    };
  } else {
    const next = Math.max(at + told.hoursBetween * HOUR_MS, Math.min(gone.holdsUntil ?? 0, at + LONGEST_WAIT_MS));
    state = {
      ...done,
      answeredAt: instant(at),
      nextAt: instant(next),
      mustWait: true,
      failures: 0,
      trouble: null,
      days: gone.kind === 'unchanged' ? (before?.days ?? 0) : gone.days,
      validators: gone.validators,
    };
  }
  await store.fetches.keep(state);
  return { ok: true, value: state };
}

type Fetched =
  | { readonly kind: 'trouble'; readonly trouble: FetchTrouble; readonly waitS?: number | null }
  | { readonly kind: 'unchanged'; readonly validators: FetchState['validators']; readonly holdsUntil: number | null }
  | {
      readonly kind: 'days';
      readonly days: number;
      readonly validators: FetchState['validators'];
      readonly holdsUntil: number | null;
    };

const inVain = (kind: FetchTrouble['kind'], detail: string): Fetched => ({ kind: 'trouble', trouble: { kind, detail } });

async function days(options: Attempt, source: SourceRecord, before: FetchState | null): Promise<Fetched> {
  if (source.service === 'folder') return fromFolder(options, source, before);
  if (source.service === 'address') return fromAddress(options, source, before);
  const service = source.service!;
  if (!isOpenService(service)) return inVain('address', service);
  const origin = options.origins?.[service] ?? weatherServices[service].origin!;
  const asking = askService[service](source, await spanOf(options, source), origin);
  let step = asking.next();
  let last: { readonly address: string; readonly answer: Extract<Answered, { kind: 'answer' }> } | null = null;
  while (!step.done) {
    const address = step.value;
    const answer = await ask(options, address, before?.validators[address] ?? null, true);
    if (answer.kind === 'trouble') return answer;
    if (answer.kind === 'unchanged')
      return { kind: 'unchanged', validators: before?.validators ?? {}, holdsUntil: answer.holdsUntil };
    last = { address, answer };
    step = asking.next(new TextDecoder().decode(answer.bytes));
  }
  if (!step.value.ok) return inVain('unreadable', inShort(step.value.problems));
  return keep(options, source, step.value.value, {
    // Only of the last address: what is not asked for again could not be gone on from.
    validators: last === null ? {} : { [last.address]: last.answer.validators },
    holdsUntil: last?.answer.holdsUntil ?? null,
  });
}

async function fromAddress(options: Attempt, source: SourceRecord, before: FetchState | null): Promise<Fetched> {
  const { from, today } = await spanOf(options, source);
  const address = addressFor(source.address!, { from, to: today });
  const answer = await ask(options, address, before?.validators[address] ?? null, false);
  if (answer.kind === 'trouble') return answer;
  if (answer.kind === 'unchanged')
    return { kind: 'unchanged', validators: before?.validators ?? {}, holdsUntil: answer.holdsUntil };
  const read = await readOwnTable(answer.bytes, new URL(address).hostname, source);
  if (!read.ok) return inVain('unreadable', inShort(read.problems));
  return keep(options, source, read.value, {
    validators: { [address]: answer.validators },
    holdsUntil: answer.holdsUntil,
  });
}

async function fromFolder(options: FetcherOptions, source: SourceRecord, before: FetchState | null): Promise<Fetched> {
  const known = before?.validators ?? {};
  const files = await newFiles(options.folder, source.address!, (name, mark) => known[name]?.etag === mark, options.now());
  if (files.length === 0) return { kind: 'unchanged', validators: known, holdsUntil: null };
  const all: WeatherRecord[] = [];
  const marks: Record<string, Validators> = { ...known };
  for (const { name, bytes, mark } of files) {
    const read = await readOwnTable(bytes, name, source);
    if (!read.ok) return inVain('unreadable', inShort(read.problems));
    for (const record of read.value) all.push(record);
    marks[name] = { etag: mark, lastModified: null };
  }
  // Of a day in several files the newest file tells.
  const byDay = new Map(all.map((record) => [record.date, record]));
  return keep(options, source, [...byDay.values()], { validators: marks, holdsUntil: null });
}

const ask = (
  { agent, mayAskOwnNetwork, origins, patienceMs = PATIENCE_MS, now, stopping }: Attempt,
  address: string,
  validators: Validators | null,
  mayRedirect: boolean,
) =>
  askAddress(address, {
    agent,
    validators,
    mayRedirect,
    mayAskOwnNetwork: mayAskOwnNetwork || origins !== undefined,
    patienceMs,
    ...(stopping && { stopping }),
    now: now(),
  });

/** From some days before the newest measured one; at first, from years ago. */
async function spanOf({ store, now }: FetcherOptions, { sourceId, timeZone, service }: SourceRecord) {
  const today = dayInZone(timeZone, new Date(now()));
  const measured = (await store.current('weather'))
    .filter(({ value }) => value.sourceId === sourceId && !isForecast(value))
    .map(({ value }) => value.date);
  const newest = measured.reduce<IsoDay | null>((a, b) => (a === null || b > a ? b : a), null);
  const years = service === 'noaa-daily' ? YEARS_AT_FIRST : 0;
  const from =
    newest === null ? `${Number(today.slice(0, 4)) - years}-01-01` : formatDay(addDays(day(newest), -LOOKED_BACK_DAYS));
  return { from, today };
}

/** Keeps the days that say something new; what a person wrote stands, and so does a measured day beside a forecast of it. */
async function keep(
  { store, inTurn, now }: FetcherOptions,
  { sourceId, service }: SourceRecord,
  fetched: readonly WeatherRecord[],
  answer: { readonly validators: FetchState['validators']; readonly holdsUntil: number | null },
): Promise<Fetched> {
  return inTurn(async () => {
    const held = new Map(
      (await store.current('weather')).filter(({ value }) => value.sourceId === sourceId).map((each) => [each.value.date, each]),
    );
    const fresh: WeatherRecord[] = [];
    for (const record of fetched) {
      const before = held.get(record.date);
      const isWanted =
        before === undefined
          ? held.size === 0 || !(await wasTakenAway(store, record))
          : isForecast(before.value) || (!isForecast(record) && isFetched(before.author));
      if (isWanted) fresh.push(record);
    }
    const written = await store.importProgram({ weather: fresh }, { author: service!, at: instant(now()) });
    if (!written.ok) return inVain('storage', inShort(written.problems));
    return { kind: 'days', days: fetched.length, ...answer };
  });
}

/** Whether a person removed what was held of this day: it does not come back by itself. */
async function wasTakenAway(store: FetcherOptions['store'], { sourceId, date }: WeatherRecord): Promise<boolean> {
  const said = await store.history({ kind: 'weather', key: `${sourceId}|${date}` });
  return said.some(({ standing, author }) => standing === 'removed' && !isFetched(author));
}

const isFetched = (author: string): boolean => (WEATHER_SERVICES as readonly string[]).includes(author);

const instant = (ms: number): string => new Date(ms).toISOString();

const inShort = (problems: readonly Problem[]): string => {
  const [first] = problems;
  if (first === undefined) return 'it could not be read';
  const at = [first.where.file, first.where.row, first.where.column].filter((part) => part !== undefined).join(' ');
  const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : '';
  return `${at === '' ? '' : `${at}: `}got ${first.got}, expected ${first.expected}. ${first.fix}${more}`;
};

const inventedPlace: Problem = {
  where: {},
  got: 'a program that is invented',
  expected: 'a program of your own: nothing is fetched for places that do not exist',
  fix: 'Go over to your own program, under Program.',
};

const unknownSource = (sourceId: string): Problem => ({
  where: { parameter: 'sourceId' },
  got: sourceId,
  expected: 'a weather source of this program',
  fix: 'Choose one from the list.',
});

const tooSoon = ({ nextAt, trouble }: FetchState): Problem => ({
  where: {},
  got: trouble === null ? 'a service that answered not long ago' : `a service that asks for patience (${trouble.detail})`,
  expected: `patience until ${nextAt}`,
  fix: 'Wait: services that are asked too often shut their askers out. It is asked again by itself.',
});
