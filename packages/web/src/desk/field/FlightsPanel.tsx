import { degreeDaysFrom, type InsectFlights, REGION_KM, type SeasonFlights, type TemperatureUnit } from '@duskwatch/core';
import { countText, intervalText, percentText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import {
  agreementText,
  chosenText,
  countText as flightCountText,
  flightText,
  flownText,
  momentText,
} from '../../shared/flights/in-words.ts';
import { flightsWords as w } from '../../text/flights.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Folded } from '../../ui/Folded.tsx';
import { FoldedTable } from '../../ui/table/FoldedTable.tsx';

/** How far each flight in the catch has come, how sure that is, and whether it comes when the model says. */
export function FlightsPanel({ insect, of, unit }: { insect: InsectFlights; of: string; unit: TemperatureUnit }) {
  const { flights, noFlights } = insect;
  const wording = useWording();
  return (
    <div className="flights">
      <h3>{w.section}</h3>
      {flights === null ? (
        noFlights && <p className="absent">{w.why[noFlights]}</p>
      ) : (
        <>
          {flights.list.length > 0 && (
            <ol className="flight-list">
              {flights.list.map((flight) => (
                <li key={flight.number}>
                  <b>{w.numbered(flight.number)}</b> {flightText(flight)}
                </li>
              ))}
            </ol>
          )}
          <p className={flights.unsure ? 'unsure' : undefined}>{flightCountText(flights)}</p>
          {flights.agreement.map((each) => (
            <p key={`${each.compared}|${each.published}`}>{agreementText(each, flights.unit, unit)}</p>
          ))}
          <p className="basis">{w.basis(countText(flights.moths), flights.traps, wording.design[flights.design])}</p>
          <Evidence flights={flights} unit={unit} />
          <FlightTable flights={flights} of={of} unit={unit} />
        </>
      )}
    </div>
  );
}

/** Which traps were fitted together, what was expected of them, and the statistics behind the flights. */
function Evidence({ flights, unit }: { flights: SeasonFlights; unit: TemperatureUnit }) {
  const { together, intervals, leftOut, level, scatter, expected, pastSeasons } = flights;
  const heat = (value: number) => heatText(value, flights.unit, unit);
  const peaks = expected.map(({ heat: at, spread }) => w.expectedPeak(heat(at), heat(spread))).join(', ');
  const { trapIds } = together;
  const lines = [
    trapIds.length > 1
      ? `${w.together(countText(together.moths), trapIds.length, intervals, REGION_KM)} ${w.trapsOf(trapIds.join(', '))}`
      : w.alone(intervals, REGION_KM),
    expected.length === 0
      ? w.expectedNone
      : pastSeasons.length > 0
        ? w.expectedSeasons(pastSeasons.join(', '), peaks)
        : w.expectedModel(peaks),
    chosenText(flights),
    w.scatter(rateText(1 / scatter.ofVisit), rateText(Math.exp(Math.sqrt(Math.log1p(scatter.ofNight)))), percentText(level)),
    ...(leftOut > 0 ? [w.leftOut(leftOut)] : []),
  ];
  return (
    <Folded title={w.evidence}>
      {lines.map((line) => (
        <p key={line} className="basis">
          {line}
        </p>
      ))}
    </Folded>
  );
}

function FlightTable({ flights, of, unit }: { flights: SeasonFlights; of: string; unit: TemperatureUnit }) {
  if (flights.list.length === 0) return null;
  const heat = (degreeDays: number) => heatText(degreeDays, flights.unit, unit);
  return (
    <FoldedTable
      title={w.table.title}
      of={`${of}, ${localName(flights.modelName)}`}
      rows={flights.list}
      keyOf={({ number }) => number}
      columns={[
        { head: w.table.flight, value: ({ number }) => number, number: true },
        { head: w.table.flown, value: ({ flown }) => flownText(flown) },
        { head: w.table.start, value: ({ start }) => start.dates?.middle ?? null, cell: ({ start }) => momentText(start) },
        { head: w.table.peak, value: ({ peak }) => peak.dates?.middle ?? null, cell: ({ peak }) => momentText(peak) },
        { head: w.table.end, value: ({ end }) => end.dates?.middle ?? null, cell: ({ end }) => momentText(end) },
        {
          head: w.table.heat,
          value: ({ peak }) => degreeDaysFrom(peak.heat, flights.unit, unit),
          cell: ({ peak }) => `${heat(peak.heat)} (${heat(peak.low)}–${heat(peak.high)})`,
          number: true,
        },
        {
          head: w.table.moths,
          value: ({ moths }) => moths.estimate,
          cell: ({ moths }) => `${countText(moths.estimate)} (${intervalText(moths.low, moths.high)})`,
          number: true,
        },
      ]}
    />
  );
}
