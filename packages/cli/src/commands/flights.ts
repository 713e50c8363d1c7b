import {
  day,
  english,
  type FieldFlights,
  type FlightCache,
  type Flown,
  fieldFlights,
  type Prepared,
  prepare,
} from '@duskwatch/core';
import { alignColumns } from '../columns.ts';
import { done, type Outcome } from '../outcome.ts';
import { progressBar } from '../progress.ts';
import { programOnDay, type ReadOptions, titleOf } from '../read-program.ts';
import { print } from '../terminal.ts';
import { flightsJson, forecastDays, momentDays } from '../written-flights.ts';

export async function flights(folder: string | undefined, options: ReadOptions): Promise<Outcome> {
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const cells = await everyCell(prepare(read.program, { on: day(read.on) }));
  print(options.json ? flightsJson(cells) : [titleOf(read), ...flightTable(cells), '', ...eventTable(cells)].join('\n'));
  return done;
}

/** Every field and insect with a trap this season. Fields that share traps share the fit. */
async function everyCell(prepared: Prepared): Promise<FieldFlights[]> {
  const pairs = prepared.program.fields.flatMap((field) => prepared.insects.map((insect) => ({ field, insect })));
  const cache: FlightCache = new Map();
  const bar = await progressBar('flights');
  const cells = pairs.map(({ field, insect }, done) => {
    bar.update(done + 1, pairs.length);
    return fieldFlights(prepared, field, insect, cache);
  });
  bar.stop();
  return cells.filter(({ noFlights }) => noFlights !== 'no-trap');
}

const LACKING: { readonly [K in NonNullable<FieldFlights['noFlights']>]: string } = {
  'no-trap': 'no trap this season',
  'no-model': 'no heat rule in the catalogue',
  'no-weather-source': 'no weather source',
  'no-heat': 'heat since the year began is not known',
  'nothing-caught': 'nothing caught',
};

function flightTable(cells: readonly FieldFlights[]): string[] {
  const words = english({ temperature: 'C' });
  const rows = cells.flatMap(({ field, insect, flights, noFlights }): string[][] => {
    const name = [field, words.insect(insect)];
    if (flights === null) return [[...name, '–', LACKING[noFlights!]]];
    const { read, design, together } = flights;
    const sure = read.unsure ? 'number of flights unsure' : '';
    if (read.flights.length === 0) return [[...name, '0', 'only stray moths', '', '', design, String(together.length), sure]];
    return read.flights.map(({ number, flown, peak, status }) => [
      ...name,
      `${number} of ${read.flights.length}`,
      status,
      flownText(flown),
      momentDays(peak),
      design,
      String(together.length),
      sure,
    ]);
  });
  return alignColumns([['field', 'insect', 'flight', 'state', 'flown', 'peak', 'design', 'traps together', ''], ...rows]);
}

/** The next event of each model in each field. */
function eventTable(cells: readonly FieldFlights[]): string[] {
  const words = english({ temperature: 'C' });
  const rows = cells.flatMap(({ field, insect, models }) =>
    models.flatMap(({ model, state, events }): string[][] => {
      const name = [field, words.insect(insect), model.name.en];
      if (state === 'not-started') return [[...name, 'not started: its biofix has not been seen', '']];
      if (state === 'weather-missing') return [[...name, 'weather is missing', '']];
      const next = events.find(({ begins }) => begins.status !== 'came');
      return next ? [[...name, eventName(next.event), forecastDays(next.begins)]] : [[...name, 'every event has come', '']];
    }),
  );
  return alignColumns([['field', 'insect', 'model', 'next', '10–50–90 % dates'], ...rows]);
}

const eventName = ({ event, generation }: { readonly event: string; readonly generation: number | null }): string =>
  `${event.replaceAll('-', ' ')}${generation === null ? '' : `, generation ${generation}`}`;

function flownText({ share, low, high, told }: Flown): string {
  if (told === 'cannot-tell') return 'cannot tell yet';
  const span = `${percent(low)}–${percent(high)}`;
  return told === 'share' ? `${percent(share)} (${span})` : `between ${span.replace('–', ' and ')}`;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;
