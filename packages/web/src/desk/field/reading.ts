/** What a field's season says on one day, for the line of text under the reader's finger. */
import {
  day,
  type FieldInsectView,
  type FieldView,
  type InsectFlights,
  type IsoDay,
  type TemperatureUnit,
  type Wording,
} from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { countText, intervalText, percentText, rateText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { flightsWords } from '../../text/flights.ts';
import { words } from '../../text/index.ts';
import { sampleKind, stageName } from '../../text/names.ts';

export interface Reading {
  readonly day: string;
  readonly parts: readonly string[];
}

/** The stage last seen on or before a day. */
function stageOn(view: FieldView, on: IsoDay): string | null {
  const seen = view.stages.filter((stage) => stage.observedOn <= on).sort((a, b) => a.observedOn.localeCompare(b.observedOn));
  return seen.at(-1)?.stage ?? null;
}

/** The flights that bring moths that night, and where the offspring of earlier nights are. */
function readFlights(flights: InsectFlights | null, on: IsoDay): string[] {
  const night = flights?.flights?.curve.find((each) => each.on === on)?.perNight ?? [];
  const fitted = night.flatMap((perNight, index) =>
    perNight >= 0.005 ? [flightsWords.read(index + 1, rateText(perNight))] : [],
  );
  const larvae = flights?.larvae;
  const now = larvae?.days.find((each) => each.on === on);
  if (!larvae || !now) return fitted;
  const [egg, small, large] = [now.egg, now.small, now.large].map(percentText) as [string, string, string];
  const w = flightsWords.larvae;
  return [...fitted, larvae.twoSizes ? w.read(egg, small, large) : w.readOne(egg, small)];
}

export function readDay(
  view: FieldView,
  insect: FieldInsectView,
  on: IsoDay,
  unit: TemperatureUnit,
  wording: Wording,
  flights: InsectFlights | null,
): Reading {
  const w = words.field.read;
  const at = day(on);
  const rates = insect.lines.flatMap((line) => {
    const point = line.points.find((each) => day(each.from) <= at && at < day(each.to));
    if (!point) return on >= line.to ? [w.notYet] : [];
    if (point.perNight === null) return [w.noTrap];
    const interval = point.low === null || point.high === null ? '' : intervalText(point.low, point.high);
    return [w.rate(rateText(point.perNight), interval, wording.design[line.design])];
  });
  const earlier = insect.earlierSeasons.flatMap(({ year, design, points }) => {
    const point = points.find((each) => day(each.from) <= at && at < day(each.to));
    if (!point || point.perNight === null) return [];
    return [w.earlier(year, rateText(point.perNight), wording.design[design])];
  });
  const stage = stageOn(view, on);
  const heat = insect.heat.flatMap((strip) => {
    const reached = strip.days.find((each) => each.date === on);
    if (!reached) return [];
    if (reached.total === null) return [w.noHeat];
    return [`${heatText(reached.total, strip.unit, unit)}${reached.bridged ? ` (${w.bridged})` : ''}`];
  });
  const checks = insect.checks
    .filter((check) => check.on === on)
    .map((check) => {
      const count = check.count === null ? w.uncounted : countText(check.count);
      return w.check(check.trapId, count, check.nights, wording.condition[check.condition]);
    });
  const lures = insect.lures.filter((lure) => lure.placedOn === on).map((lure) => w.lure(lure.trapId));
  const treatments = insect.treatments.flatMap((each) => {
    if (each.appliedOn === on) return [w.treatment(each.product)];
    return each.protectsUntil !== null && each.appliedOn < on && on <= each.protectsUntil ? [w.protected] : [];
  });
  const samples = insect.samples
    .filter((each) => each.sampledOn === on)
    .map((each) =>
      w.sample(each.infested === null ? w.uncounted : countText(each.infested), each.examined, sampleKind(each.kind)),
    );
  const parts = [
    ...new Set(rates),
    ...earlier,
    ...readFlights(flights, on),
    ...(stage ? [stageName(view.field.crop, stage)] : []),
    ...heat,
    ...checks,
    ...lures,
    ...samples,
    ...treatments,
  ];
  return { day: dayText(on), parts };
}
