/** The fitted curves of a season's flights, night by night. */
import type { Day } from '../base/day.ts';
import { flownBy } from '../flight/flight-shape.ts';
import { expectedHeat } from '../forecast/expected-heat.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { FittedFlights } from '../review/field-flights.ts';

export interface FlightNights {
  /** The day of the first night; each of the others is of one day more. */
  readonly from: Day;
  /** Degree-days from the start of the axis through each day. */
  readonly heat: readonly number[];
  /** Moths per trap and night of each flight. */
  readonly perNight: readonly (readonly number[])[];
}

/**
 * From the start of the heat axis to some days past the last measured one, with expected heat for these. The night of a
 * day has the heat of that day. Null without flights, or where the heat is not known.
 */
export function flightNights({ read, axisFrom }: FittedFlights, track: HeatTrack, daysAhead: number): FlightNights | null {
  const outlook = read.flights.length === 0 ? null : expectedHeat(track, axisFrom, daysAhead);
  if (outlook === null) return null;
  const heat: number[] = [];
  const perNight: number[][] = [];
  let before = 0;
  for (const daily of outlook.daily) {
    const after = before + daily;
    perNight.push(
      read.flights.map(({ curve: { peak, width, skew }, moths }) => {
        const flown = (at: number) => moths.estimate * flownBy((at - peak) / width, skew);
        return flown(after) - flown(before);
      }),
    );
    heat.push(after);
    before = after;
  }
  return { from: axisFrom, heat, perNight };
}
