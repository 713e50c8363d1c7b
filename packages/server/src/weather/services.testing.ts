/**
 * Services of weather as their public documentation says they answer, for one invented place, with the faults that services
 * have. Figures are invented; shapes are those of NOAA NCEI's access data service, api.weather.gov, MET Norway's
 * Locationforecast 2.0 and Open-Meteo.
 */
import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Fault {
  readonly status?: number;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
  /** Never answers. */
  readonly silent?: boolean;
}

/** Of each asked path with its query, in order. */
interface Asked {
  readonly path: string;
  readonly headers: IncomingMessage['headers'];
}

const json = (value: unknown) => JSON.stringify(value);

const station = (url: URL) => {
  const days = ['2026-07-10', '2026-07-11', '2026-07-13', '2026-07-14'];
  return json(
    days
      .filter((day) => day >= url.searchParams.get('startDate')!)
      .map((DATE, index) => ({
        DATE,
        STATION: url.searchParams.get('stations'),
        TMAX: `${25 + index}.5`,
        // The thermometer of the low failed on one day.
        ...(DATE !== '2026-07-11' && { TMIN: `${12 + index}.1` }),
        PRCP: '1.2',
      })),
  );
};

/** Halifax is three hours behind world time in July: a day's high is told for its daylight, a night's low for the night. */
const square = json({
  properties: {
    maxTemperature: {
      uom: 'wmoUnit:degC',
      values: [
        { validTime: '2026-07-15T11:00:00+00:00/PT13H', value: 27.2 },
        { validTime: '2026-07-16T11:00:00+00:00/PT13H', value: null },
        { validTime: '2026-07-17T11:00:00+00:00/PT13H', value: 22 },
      ],
    },
    minTemperature: {
      uom: 'wmoUnit:degC',
      values: [
        { validTime: '2026-07-14T22:00:00+00:00/PT14H', value: 14.4 },
        { validTime: '2026-07-16T22:00:00+00:00/PT14H', value: 11.1 },
      ],
    },
    quantitativePrecipitation: {
      uom: 'wmoUnit:mm',
      // Half of it falls after midnight at the place.
      values: [{ validTime: '2026-07-16T00:00:00+00:00/PT6H', value: 4 }],
    },
  },
});

function hours(): string {
  const start = Date.parse('2026-07-15T09:00:00Z');
  const timeseries = Array.from({ length: 40 }, (_, index) => {
    // Hourly at first, then six hours at a time.
    const at = start + (index < 24 ? index : 24 + (index - 24) * 6) * 3_600_000;
    const hour = (new Date(at).getUTCHours() + 21) % 24;
    const celsius = 15 + 5 * Math.sin(((hour - 9) / 24) * 2 * Math.PI);
    return {
      time: new Date(at).toISOString(),
      data: {
        instant: { details: { air_temperature: Math.round(celsius * 10) / 10 } },
        ...(index < 24 && { next_1_hours: { details: { precipitation_amount: 0.1 } } }),
        next_6_hours: { details: { air_temperature_max: 21, air_temperature_min: 9.5, precipitation_amount: 0.6 } },
      },
    };
  });
  return json({ type: 'Feature', properties: { timeseries } });
}

const models = json({
  utc_offset_seconds: -10_800,
  timezone: 'America/Halifax',
  daily_units: { time: 'iso8601', temperature_2m_max: '°C', temperature_2m_min: '°C', precipitation_sum: 'mm' },
  daily: {
    time: ['2026-07-13', '2026-07-14', '2026-07-15', '2026-07-16'],
    temperature_2m_max: [24.1, 25.2, 26.3, null],
    temperature_2m_min: [13.1, 14.2, 15.3, null],
    precipitation_sum: [0, 1.5, null, null],
  },
});

const TAG = '"of-today"';

export async function weatherServices() {
  const asked: Asked[] = [];
  let faults: Fault[] = [];
  const answer = (request: IncomingMessage, response: ServerResponse) => {
    const url = new URL(request.url!, 'http://service');
    asked.push({ path: request.url!, headers: request.headers });
    const fault = faults.shift();
    if (fault?.silent) return;
    if (fault) return void response.writeHead(fault.status ?? 200, fault.headers).end(fault.body ?? '');
    if (request.headers['if-none-match'] === TAG) return void response.writeHead(304).end();
    const body = url.pathname.startsWith('/access/')
      ? station(url)
      : url.pathname.startsWith('/points/')
        ? json({ properties: { gridId: 'CAR', gridX: 31, gridY: 80 } })
        : url.pathname === '/gridpoints/CAR/31,80'
          ? square
          : url.pathname.startsWith('/weatherapi/')
            ? hours()
            : url.pathname === '/v1/forecast'
              ? models
              : url.pathname === '/yard.csv'
                ? 'date,tmin_f,tmax_f,rain_in\n2026-07-13,50,77,0.1\n2026-07-14,53.6,78.8,0\n'
                : null;
    if (body === null) return void response.writeHead(404).end('{"title":"no such place"}');
    response.writeHead(200, { 'content-type': 'application/json', etag: TAG }).end(body);
  };
  const server = createServer(answer).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    origin,
    asked,
    /** The next answers are these instead. */
    fail: (...next: Fault[]) => {
      faults = next;
    },
    stop: () => {
      server.closeAllConnections();
      server.close();
    },
  };
}
