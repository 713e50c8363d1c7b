/** Fetching, against services that answer as theirs are documented, and that fail as services do. */
import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { emptyProgram, type SourceRecord, type WeatherRecord } from '@duskwatch/core';
import { openStore, uuidv7 } from '@duskwatch/store';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { programReader } from '../reader.ts';
import { weatherFetcher } from './fetcher.ts';
import { weatherServices } from './services.testing.ts';

const HOUR_MS = 3_600_000;

const source = (service: SourceRecord['service'], change: Partial<SourceRecord> = {}): SourceRecord => ({
  sourceId: 'yard',
  name: null,
  kind: null,
  latitude: 44.9,
  longitude: -63.5,
  elevationM: 40,
  timeZone: 'America/Halifax',
  fillFrom: null,
  service,
  stationId: 'XX000000001',
  address: null,
  fetching: true,
  termsSeenOn: '2026-07-01',
  ...change,
});

describe('fetching the days of a weather source', () => {
  let services: Awaited<ReturnType<typeof weatherServices>>;
  let folder: string;
  const ends: (() => unknown)[] = [];
  beforeEach(async () => {
    services = await weatherServices();
    folder = mkdtempSync(join(tmpdir(), 'duskwatch-fetch-'));
    ends.push(services.stop, () => rmSync(folder, { recursive: true, force: true }));
  });
  afterEach(async () => {
    for (const end of ends.splice(0).reverse()) await end();
  });

  async function program(sources: readonly SourceRecord[], held: readonly WeatherRecord[] = [], invented = false) {
    const store = await openStore(join(folder, 'data.sqlite'));
    ends.push(() => store.close());
    const settings = { ...emptyProgram().settings, invented };
    const imported = await store.importProgram(
      { settings, sources, weather: held },
      { author: 'ida', at: '2026-07-15T06:00:00Z' },
    );
    if (!imported.ok) throw new Error(JSON.stringify(imported.problems));
    // Nine in the morning at the place.
    const clock = { ms: Date.parse('2026-07-15T12:00:00Z') };
    const { origin } = services;
    const fetcher = weatherFetcher({
      store,
      reader: programReader(store),
      now: () => clock.ms,
      inTurn: (work) => work(),
      folder: join(folder, 'weather-in'),
      agent: 'Duskwatch/test',
      mayAskOwnNetwork: true,
      origins: { 'noaa-daily': origin, 'us-forecast': origin, 'norway-forecast': origin, 'open-meteo': origin },
      patienceMs: 300,
    });
    const days = async () =>
      (await store.current('weather')).map(({ value }) => [
        value.date,
        value.tminC,
        value.tmaxC,
        value.precipitationMm,
        value.forecastMadeOn ?? null,
      ]);
    return { store, fetcher, clock, days };
  }

  it('takes a station’s measured days as they are, with what is missing of them missing', async () => {
    const { fetcher, days } = await program([source('noaa-daily')]);
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { days: 4, failures: 0, trouble: null } });
    expect(await days()).toEqual([
      ['2026-07-10', 12.1, 25.5, 1.2, null],
      ['2026-07-11', null, 26.5, 1.2, null],
      ['2026-07-13', 14.1, 27.5, 1.2, null],
      ['2026-07-14', 15.1, 28.5, 1.2, null],
    ]);
    const [{ path, headers }] = services.asked as [(typeof services.asked)[0]];
    expect(Object.fromEntries(new URL(path, services.origin).searchParams)).toEqual({
      dataset: 'daily-summaries',
      stations: 'XX000000001',
      startDate: '2016-01-01',
      endDate: '2026-07-15',
      dataTypes: 'TMAX,TMIN,PRCP',
      units: 'metric',
      format: 'json',
    });
    expect(headers['user-agent']).toBe('Duskwatch/test');
  });

  it('reads a grid’s highs and lows into the days of the place, and says they are a forecast', async () => {
    const { fetcher, days } = await program([source('us-forecast', { latitude: 44.9, longitude: -63.50001 })]);
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { trouble: null } });
    expect(services.asked.map(({ path }) => path)).toEqual(['/points/44.9,-63.5', '/gridpoints/CAR/31,80']);
    // The 16th has no high, so it is not there; half of the night's rain fell before midnight of the 15th.
    expect(await days()).toEqual([
      ['2026-07-15', 14.4, 27.2, 2, '2026-07-15'],
      ['2026-07-17', 11.1, 22, null, '2026-07-15'],
    ]);
  });

  it('gathers hours into whole days, and leaves out those of which hours are not told', async () => {
    const { fetcher, days } = await program([source('norway-forecast')]);
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { trouble: null } });
    const told = await days();
    expect(told.map(([date]) => date)).toEqual(['2026-07-16', '2026-07-17', '2026-07-18', '2026-07-19']);
    // From the blocks of six hours that begin on the morning of the 16th.
    expect(told[1]).toEqual(['2026-07-17', 9.5, 21, 2.4, '2026-07-15']);
    expect(services.asked[0]!.path).toBe('/weatherapi/locationforecast/2.0/complete?lat=44.9&lon=-63.5&altitude=40');
  });

  it('replaces forecast days by what a model worked out afterwards, and never the other way about', async () => {
    const forecast = { sourceId: 'yard', tminC: 1, tmaxC: 2, precipitationMm: null };
    const { fetcher, clock, days } = await program(
      [source('open-meteo')],
      [
        { ...forecast, date: '2026-07-14', forecastMadeOn: '2026-07-10' },
        { ...forecast, date: '2026-07-15', forecastMadeOn: '2026-07-10' },
        // Somebody read a thermometer: that stands.
        { ...forecast, date: '2026-07-13' },
      ],
    );
    await fetcher.fetchNow('yard');
    const told = [
      ['2026-07-13', 1, 2, null, null],
      ['2026-07-14', 14.2, 25.2, 1.5, null],
      ['2026-07-15', 15.3, 26.3, null, '2026-07-15'],
    ];
    expect(await days()).toEqual(told);
    // At first it is asked for more days than later. Asked for the same again, it says that nothing is new.
    for (let times = 0; times < 2; times++) {
      clock.ms += 6 * HOUR_MS;
      services.asked.splice(0);
      await fetcher.fetchDue();
    }
    expect(services.asked[0]!.headers['if-none-match']).toBe('"of-today"');
    expect(await days()).toEqual(told);
  });

  it('brings back no day that a person took away', async () => {
    const { fetcher, store, clock, days } = await program([source('noaa-daily')]);
    await fetcher.fetchNow('yard');
    const wrong = (await store.current('weather')).find(({ value }) => value.date === '2026-07-13')!;
    const { recordId, revisionId: baseRevisionId } = wrong;
    const removal = {
      revisionId: uuidv7(),
      recordId,
      kind: 'weather',
      baseRevisionId,
      author: 'ida',
      at: '2026-07-15T12:30:00Z',
    };
    await store.append([{ ...removal, kind: 'weather', value: null }]);
    clock.ms += 12 * HOUR_MS;
    await fetcher.fetchDue();
    expect((await days()).map(([date]) => date)).toEqual(['2026-07-10', '2026-07-11', '2026-07-14']);
  });

  it('reads a table at an address whose headings leave nothing open, and asks about one that does', async () => {
    const address = `${services.origin}/yard.csv?from={from}&to={to}`;
    const { fetcher, days, clock } = await program([source('address', { address })]);
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { trouble: null, days: 2 } });
    expect(services.asked[0]!.path).toBe('/yard.csv?from=2026-01-01&to=2026-07-15');
    expect(await days()).toEqual([
      ['2026-07-13', 10, 25, 2.54, null],
      ['2026-07-14', 12, 26, 0, null],
    ]);
    services.fail({ body: 'date,tmin,tmax\n2026-07-15,50,77\n' });
    clock.ms += HOUR_MS;
    expect(await fetcher.fetchNow('yard')).toMatchObject({
      ok: true,
      value: { trouble: { kind: 'unreadable', detail: expect.stringContaining('unit') } },
    });
    expect((await days()).length).toBe(2);
  });

  it('reads what is put into the watched folder, once, and again when it has changed', async () => {
    const { fetcher, days, clock } = await program([source('folder', { address: 'yard', termsSeenOn: null })]);
    const put = (name: string, text: string) => {
      mkdirSync(join(folder, 'weather-in'), { recursive: true });
      writeFileSync(join(folder, 'weather-in', name), text);
      const at = new Date(clock.ms - 60_000);
      utimesSync(join(folder, 'weather-in', name), at, at);
    };
    put('yard-1.csv', 'date,tmin_c,tmax_c\n2026-07-13,10,20\n');
    put('attic.csv', 'date,tmin_c,tmax_c\n2026-07-13,30,40\n');
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { days: 1 } });
    expect(await days()).toEqual([['2026-07-13', 10, 20, null, null]]);
    clock.ms += HOUR_MS;
    put('yard-1.csv', 'date,tmin_c,tmax_c\n2026-07-13,11,20\n2026-07-14,12,21\n');
    await fetcher.fetchDue();
    expect(await days()).toEqual([
      ['2026-07-13', 11, 20, null, null],
      ['2026-07-14', 12, 21, null, null],
    ]);
    clock.ms += HOUR_MS;
    put('yard-2.csv', 'date,tmin_c,tmax_c\n2026-07-15,abc,21\n');
    expect(await fetcher.fetchNow('yard')).toMatchObject({
      ok: true,
      value: { trouble: { detail: expect.stringContaining('yard-2.csv') } },
    });
    expect((await days()).length).toBe(2);
  });

  it.each([
    ['a service that never answers', { silent: true }, 'late 127.0.0.1'],
    ['one that is broken', { status: 500, body: '{"detail":"database down"}' }, 'status 127.0.0.1 500: database down'],
    ['one that has another shape now', { body: '[{"date":"2026-07-14"}]' }, 'expected an answer as the service describes it'],
    ['one that answers with a page', { body: '<html>maintenance</html>' }, 'maintenance'],
    ['tenths of a degree', { body: '[{"DATE":"2026-07-14","TMAX":285,"TMIN":151}]' }, 'weather that can be'],
    ['an error where days should be', { status: 400, body: '{"errorMessage":"no such station"}' }, '400: no such station'],
    ['nothing at all', { body: '' }, 'an empty answer'],
  ])('keeps nothing of %s, says so, and tries again later each time', async (_, fault, said) => {
    const { fetcher, clock, days } = await program([source('noaa-daily')]);
    for (const minutes of [15, 30, 60]) {
      services.fail(fault);
      services.asked.splice(0);
      await fetcher.fetchDue();
      expect(services.asked.length).toBe(1);
      const [state] = await fetcher.states();
      expect(`${state!.trouble!.kind} ${state!.trouble!.detail}`).toContain(said);
      expect(Date.parse(state!.nextAt) - clock.ms).toBe(minutes * 60_000);
      // Not before.
      clock.ms += minutes * 60_000 - 1;
      await fetcher.fetchDue();
      expect(services.asked.length).toBe(1);
      clock.ms += 1;
    }
    expect(await days()).toEqual([]);
    await fetcher.fetchDue();
    expect((await fetcher.states())[0]).toMatchObject({ failures: 0, trouble: null, days: 4 });
  });

  it('waits as long as a service asks for, also when a person cannot', async () => {
    const { fetcher, clock } = await program([source('noaa-daily')]);
    services.fail({ status: 429, headers: { 'retry-after': '7200' } });
    await fetcher.fetchDue();
    clock.ms += HOUR_MS;
    const refused = await fetcher.fetchNow('yard');
    expect(refused).toMatchObject({ ok: false, problems: [{ expected: expect.stringContaining('2026-07-15T14:00') }] });
    expect(services.asked.length).toBe(1);
    clock.ms += HOUR_MS;
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { trouble: null } });
    // It answered: not again for half a day, whoever asks.
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: false });
  });

  it('tries again at once after a fault of its own, when a person asks', async () => {
    const { fetcher } = await program([source('noaa-daily')]);
    services.fail({ status: 400, body: '{"errorMessage":"no such station"}' });
    await fetcher.fetchNow('yard');
    expect(await fetcher.fetchNow('yard')).toMatchObject({ ok: true, value: { trouble: null } });
  });

  it('is held up by no clock that was once a month ahead', async () => {
    const { fetcher, clock } = await program([source('noaa-daily')]);
    clock.ms += 30 * 24 * HOUR_MS;
    await fetcher.fetchDue();
    clock.ms -= 30 * 24 * HOUR_MS;
    services.asked.splice(0);
    await fetcher.fetchDue();
    expect(services.asked.length).toBe(1);
  });

  it('asks nothing for a source that is switched off, for an invented program, or for terms that nobody has seen', async () => {
    const off = await program([source('noaa-daily', { fetching: false })]);
    await off.fetcher.fetchDue();
    expect(await off.fetcher.fetchNow('attic')).toMatchObject({ ok: false });
    const unseen = source('noaa-daily', { fetching: false, termsSeenOn: null });
    await off.store.importProgram({ sources: [unseen] }, { author: 'ida', at: '2026-07-15T06:00:00Z' });
    expect(await off.fetcher.fetchNow('yard')).toMatchObject({ ok: false, problems: [{ where: { column: 'terms_seen_on' } }] });
    const settings = { ...emptyProgram().settings, invented: true };
    await off.store.importProgram({ settings, sources: [source('noaa-daily')] }, { author: 'ida', at: '2026-07-15T06:00:00Z' });
    await off.fetcher.fetchDue();
    expect(await off.fetcher.fetchNow('yard')).toMatchObject({ ok: false });
    expect(services.asked).toEqual([]);
  });

  it('asks nothing in the server’s own network for a program that people share', async () => {
    const { askAddress } = await import('./transport.ts');
    const options = { agent: 'a', validators: null, mayAskOwnNetwork: false, mayRedirect: false, patienceMs: 300, now: 0 };
    for (const address of [
      `${services.origin}/yard.csv`,
      'http://localhost:1/',
      'http://[::1]:1/',
      'http://169.254.169.254/latest',
    ])
      expect(await askAddress(address, options)).toMatchObject({ kind: 'trouble', trouble: { kind: 'own-network' } });
    expect(await askAddress('file:///etc/hosts', options)).toMatchObject({ kind: 'trouble' });
    expect(services.asked).toEqual([]);
  });
});
