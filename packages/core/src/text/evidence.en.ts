/** English for what advice rests on. */
import type { Evidence, StageHeat, VisitScatter } from '../advice/types.ts';
import { degreeDaysFrom, type TemperatureUnit } from '../base/temperature.ts';
import { citation } from '../catalogue/index.ts';
import type { Dates } from './days.ts';
import { decision, decisionReason } from './decisions.en.ts';
import { doubtSentence } from './doubt.en.ts';
import { exact, figure, fine, heatSpan, percent } from './figures.ts';
import { larvaeSentence } from './larvae.en.ts';
import { askedSentence, choiceOpenSentence, otherRuleSentence, ruleOffSentence, sampleSentence } from './reasons.en.ts';
import { cropName, design, event, plural, productName, readable, standing, verb } from './words.en.ts';

/** Where the crop may be by now, where that is not only the stage seen. */
function carried({ now, ageDays }: Evidence & { kind: 'stage' }, date: Dates, unit: TemperatureUnit): string {
  if (now === null || ageDays === 0) return '';
  const span = now.from === now.to ? `at ${readable(now.to)}` : `anywhere from ${readable(now.from)} to ${readable(now.to)}`;
  return ` ${now.heat === null ? 'By the calendar' : byHeat(now.heat, unit)} it may now be ${span}${now.mayBeSince === null ? '' : `, at a stage of the rules since ${date(now.mayBeSince)} at the earliest`}.`;
}

function byHeat(heat: StageHeat, shown: TemperatureUnit): string {
  const written = (value: number) => String(Math.round(degreeDaysFrom(value, heat.unit, shown)));
  const sums = `${written(heat.fast)}–${written(heat.slow)} from planting to harvest`;
  const from = heat.ofField
    ? 'what past years brought between the dates typed for this field'
    : [citation(heat.source), standing[heat.standing]].filter((part) => part !== null).join('; ');
  return `By heat (${written(heat.degreeDays)} °${shown}·d since then; ${sums}: ${from})`;
}

export function outOfSeason(item: Evidence & { kind: 'out-of-season' }, date: Dates): string {
  switch (item.why) {
    case 'not-a-host':
      return 'The catalogue does not know this insect to feed on this crop.';
    case 'no-rule':
      return 'No rule for this crop, and nobody traps or samples the insect here.';
    case 'not-planted':
      return `Not planted before ${date(item.date!)}.`;
    case 'harvested':
      return `Harvested on ${date(item.date!)}.`;
    case 'harvest-stop':
      return `Harvest on ${date(item.date!)} is fewer than ${item.days} days away: the rule asks for nothing more.`;
    case 'stage':
      return 'The crop is not at a stage at which the rules hold.';
  }
}

export function evidence(item: Evidence, degrees: (valueC: number) => string, date: Dates, unit: TemperatureUnit): string {
  switch (item.kind) {
    case 'out-of-season':
      return outOfSeason(item, date);
    case 'stage':
      return `Crop stage ${readable(item.stage)}, seen ${date(item.observedOn)} (${plural(item.ageDays, 'day')} ago); ${
        item.needed.length === 0 ? 'the rules hold at any stage' : `the rules hold at ${item.needed.map(readable).join(', ')}`
      }.${carried(item, date, unit)}`;
    case 'rate': {
      const spread = item.k === null ? 'gamma–Poisson' : `negative binomial, k ${fine(item.k)}, ${scatter(item.scatter)}`;
      if (item.count === 0)
        return `Nothing in ${plural(item.trapNights, 'trap-night')} (${design[item.design]}): up to ${figure(item.high)} per trap per night would still be possible, ${percent(item.level)} limit (${spread}).`;
      return `${plural(item.count, 'moth')} in ${plural(item.trapNights, 'trap-night')} (${design[item.design]}): ${figure(item.perNight)} per trap per night, ${percent(item.level)} interval ${figure(item.low)}–${figure(item.high)} (${spread}).`;
    }
    case 'threshold':
      return `The rule’s figure is ${exact(item.threshold)} per trap per ${item.per}${
        item.nearbyCrop === null ? '' : ` while ${cropName(item.nearbyCrop)} nearby draws the moths`
      }; the catch stands at ${fine(item.rate)}, ${item.reached ? 'which reaches it' : 'below it'}. Probability that the true rate is above: ${percent(item.probabilityAbove)}.`;
    case 'tier':
      return item.intervalDays === null
        ? `${figure(item.rate)} per trap per night is below the rule’s first step of ${exact(item.below ?? 0)}. Probability that the true rate is above it: ${percent(item.probabilityAbove)}.`
        : `${figure(item.rate)} per trap per night lies in the rule’s step ${item.below === null ? `above ${exact(item.from!)}` : `${exact(item.from!)}–${exact(item.below)}`}: ${plural(item.intervalDays, 'day')} between protective decisions.`;
    case 'weather-adjustment': {
      const condition = `daily maxima ${item.when === 'maxima-below' ? 'below' : 'above'} ${degrees(item.temperatureC)} for the last ${item.days} days`;
      const days = Math.abs(item.addDays) === 1 ? 'a day' : plural(Math.abs(item.addDays), 'day');
      const change = `${days} ${item.addDays > 0 ? 'longer' : 'shorter'}`;
      if (item.applied === null) return `Not known: ${condition} would make the interval ${change}; the weather is missing.`;
      return item.applied
        ? `${condition[0]!.toUpperCase()}${condition.slice(1)}: the interval is ${change}.`
        : `Daily maxima were not ${item.when === 'maxima-below' ? 'below' : 'above'} ${degrees(item.temperatureC)} on each of the last ${item.days} days: the interval stays as it is.`;
    }
    case 'accumulation':
      return `Over the last ${plural(item.nights, 'night')} a trap caught ${figure(item.perTrap)} in all, ${percent(item.share)} of what the threshold every night would give (${figure(item.atThreshold)})${item.addsUp ? ': egg-laying adds up even below the threshold' : ''}.`;
    case 'capture-chance': {
      const { moths, nights, probability, from, to, trapId } = item;
      return `An intense capture (${moths} or more in ${nights} nights) between visits of trap ${trapId}, from ${date(from)} to ${date(to)}, is not likely: ${percent(probability)}${captureRests(item.assumed)}. Nothing is dated from it.`;
    }
    case 'biofix':
      return biofixSentence(item, date);
    case 'event':
      return eventSentence(item, date, unit);
    case 'sample':
      return sampleSentence(item, date);
    case 'scouting-asked':
      return askedSentence(item);
    case 'treatment': {
      const covers =
        item.coversUntil === null
          ? 'nothing recorded says how long it protects'
          : `${item.state === 'covering' ? 'covers until' : 'covered until'} ${date(item.coversUntil)}${coverEnd(item, date)}`;
      return `Treatment of ${date(item.appliedOn)} with ${productName(item.product)}: ${covers}.`;
    }
    case 'decision':
      return `Decided on ${date(item.decidedOn)} ${decision[item.decision]}, because ${decisionReason[item.reason]}${item.note === null ? '' : ` (“${item.note}”)`}; the question comes back on ${date(item.holdsUntil)}, ${decisionHolds(item)}.`;
    case 'trap-unusable':
      return `Trap ${item.trapId} (${design[item.design]}) ${unusable(item, date)}.`;
    case 'trap-doubt':
      return doubtSentence(item, date);
    case 'lure-spent':
      return `The lure of trap ${item.trapId} was ${item.ageDays} days old, ${plural(item.ageDays - item.lifeDays, 'day')} past its stated life of ${item.lifeDays}: the catch reads low.`;
    case 'lure-unknown':
      return `Lure age not known for ${item.trapIds.join(', ')}.`;
    case 'missing':
      return missing(item, date);
    case 'other-rule':
      return otherRuleSentence(item, verb);
    case 'rule-off':
      return ruleOffSentence(item);
    case 'choice-open':
      return choiceOpenSentence(item);
    case 'other-design':
      return `A ${design[item.design]} stands here too: ${figure(item.perNight)} per night${
        item.adjusted === null || item.against === null
          ? '; no published ratio between the designs'
          : `, as a ${design[item.against]} about ${figure(item.adjusted[0])}–${figure(item.adjusted[1])} (${citation(item.source) ?? 'common practice, no source'})`
      }. Designs are not pooled.`;
    case 'sampling':
      return `Look at ${item.units} ${readable(item.unit)}${item.places === null ? '' : ` in ${item.places} places`} for ${item.sign === 'infested' ? 'infestation' : readable(item.sign)}; the figure is ${item.sign === 'egg-masses' ? `1 on ${fine(1 / item.share)} ${readable(item.unit)}` : percent(item.share)} (${citation(item.source) ?? 'common practice, no source'}).`;
    case 'larvae':
      return larvaeSentence(item, design[item.design], standing[item.standing], date, unit);
    case 'trend':
      return item.direction === 'unclear'
        ? `No clear trend over the last ${item.visits} visits (${design[item.design]}).`
        : `The catch has been ${item.direction} over the last ${item.visits} visits (${design[item.design]}).`;
    case 'question':
      return item.question === 'many-look-alikes'
        ? `Trap ${item.trapId} held ${item.got} other moths beside ${item.before} of the target on ${date(item.on)}: look-alikes are worth a second look.`
        : `Trap ${item.trapId} counted ${item.got} on ${date(item.on)} after ${item.before} were left in it: ask the scout.`;
  }
}

/** Which of the two figures ends the cover of a treatment. */
function coverEnd({ endsBy, intervalDays, protectsUntil }: Evidence & { kind: 'treatment' }, date: Dates): string {
  switch (endsBy) {
    case 'label':
      return ', the end of the protection typed from its label';
    case 'rule':
      return `, by the rule: at this catch it asks for a decision every ${plural(intervalDays!, 'day')}${
        protectsUntil === null ? '' : `, sooner than the protection typed from the label ends (${date(protectsUntil)})`
      }`;
    default:
      return ', assumed: neither the label’s days of protection nor an interval of the rule is known';
  }
}

function scatter({ from, low, high, visits, traps }: VisitScatter): string {
  const span = `between ${fine(low)} and ${fine(high)}`;
  return from === 'own-checks'
    ? `${span} by ${plural(visits, 'check')} of ${plural(traps, 'trap')} of this program: how much the visits of one trap scatter`
    : `${span} as assumed while the program has too few checks of its own: how much the visits of one trap scatter`;
}

function decisionHolds({ by, days }: Evidence & { kind: 'decision' }): string {
  if (by === 'sample-life') return `as after a sample, ${plural(days, 'day')} on`;
  return by === 'rule'
    ? `by the rule’s interval of ${plural(days, 'day')} at this catch`
    : `${plural(days, 'day')} on, assumed: the rule gives no interval`;
}

function biofixName(rule: (Evidence & { kind: 'biofix' })['rule']): string {
  switch (rule.kind) {
    case 'first-catch':
      return 'First catch';
    case 'sustained-catch':
      return 'First sustained catch';
    case 'intense-capture':
      return `Intense capture (${rule.moths} or more in ${rule.nights} nights)`;
    case 'user':
      return 'Biofix set by hand';
  }
}

/** The figures of ours that stand behind a capture between visits. */
const captureRests = ({ k, likely }: (Evidence & { kind: 'capture-chance' })['assumed']): string =>
  ` (if single nights scatter with k ${exact(k)}; taken to have happened from ${percent(likely)} on: figures chosen by Duskwatch)`;

function biofixSentence(
  { rule, on, earliest, running, probability, assumed, trapId }: Evidence & { kind: 'biofix' },
  date: Dates,
): string {
  const where = trapId === null ? '' : ` in trap ${trapId}`;
  const chance =
    probability === null || probability > 0.995
      ? ''
      : `, with a probability of ${percent(probability)}${assumed === null ? '' : captureRests(assumed)}`;
  if (running)
    return `Flight already running when trap ${trapId} was hung: ${biofixName(rule).toLowerCase()} by ${date(on)} at the latest, ${
      earliest === null ? 'and nothing tells how much earlier' : `and not before ${date(earliest)} by other traps or past years`
    }${chance}.`;
  return `${biofixName(rule)} on ${date(on)}${where}${earliest === null || earliest === on ? '' : ` (could have been from ${date(earliest)} on)`}${chance}.`;
}

function eventSentence(item: Evidence & { kind: 'event' }, date: Dates, unit: TemperatureUnit): string {
  const { span, published } = heatSpan(item, unit, exact);
  const soFar = Math.round(degreeDaysFrom(item.heatSoFar, item.unit, unit));
  const heat = `heat to ${date(item.heatThrough)} ${soFar} of ${span}${published === null ? '' : `, published as ${published}`}${item.bridgedDays === 0 ? '' : `, ${plural(item.bridgedDays, 'missing day')} bridged`}${item.filledDays === 0 ? '' : `, ${plural(item.filledDays, 'day')} taken from ${item.filledFrom}`}`;
  const name = `${event[item.event][0]!.toUpperCase()}${event[item.event].slice(1)}${item.start === null ? '' : ', at the latest'}`;
  if (item.status === 'now') return `${name}: now (${heat}).${begun(item, date)}`;
  if (item.status === 'past') return `${name}: past (${heat}).`;
  if (item.expected === null) return `${name}: ahead, date not known (${heat}).`;
  const { early, middle, late, lateOpen, method, years } = item.expected;
  const { forecastThrough } = item.expected;
  if (method === 'own-forecast') return `${name}: ${date(middle)}, by your own weather forecast (${heat}).`;
  const after = forecastThrough === null ? '' : ` after your own forecast to ${date(forecastThrough)}`;
  const how =
    method === 'past-years'
      ? `from ${plural(years, 'past year')} at this source${after}`
      : method === 'normals'
        ? `by the monthly normals of this source, which has too few years of its own${after}`
        : `if the coming days are like the last 14${after}`;
  return `${name}: about ${date(middle)}, between ${date(early)} and ${date(late)}${lateOpen ? ' or later' : ''} ${how} (${heat}).${begun(item, date)}`;
}

/** By when it may have come already, where the start of the model is not sure. */
function begun({ start, expected }: Evidence & { kind: 'event' }, date: Dates): string {
  if (start === null) return '';
  if (start.earliest === null) return ' How much earlier it may have come is not known.';
  return expected === null
    ? ''
    : ` It may have come from ${date(expected.early)} on, as the start may have been from ${date(start.earliest)} to ${date(start.latest)}.`;
}

function unusable(item: Evidence & { kind: 'trap-unusable' }, date: Dates): string {
  const nights = item.nights === null ? '' : ` ${plural(item.nights, 'night')}`;
  const since = item.since === null ? '' : ` since ${date(item.since)}`;
  switch (item.why) {
    case 'never-checked':
      return `has not been checked yet${since}`;
    case 'overdue':
      return `has not been checked for${nights || ' too long'}: last visit ${item.since === null ? 'not known' : date(item.since)}`;
    case 'unfit':
      return `was found unfit: nothing is known for${nights || ' those nights'}${since}`;
    case 'count-went-down':
      return `counted fewer than were left in it: the scout should be asked`;
    case 'left-uncounted':
      return `was visited but not counted: not counted is not zero`;
    case 'not-hung':
      return `has not been hung yet`;
    case 'taken-down':
      return `has been taken down`;
  }
}

/** A rule can be missing for the crop, or for traps of one design. */
export const noRule = (detail: string | null): string => {
  if (detail === null) return 'No rule fits';
  return detail in design
    ? `No rule is made for a ${design[detail as keyof typeof design]}`
    : `No rule for this crop (${cropName(detail)})`;
};

function missing(item: Evidence & { kind: 'missing' }, date: Dates): string {
  const span =
    item.from === null
      ? ''
      : item.to === null || item.to === item.from
        ? ` for ${date(item.from)}`
        : ` from ${date(item.from)} to ${date(item.to)}`;
  switch (item.what) {
    case 'trap':
      return 'No trap informs this field. Hang one, or add the field to a trap that stands near it.';
    case 'rule':
      return `${noRule(item.detail)}. Add one of your own (Rules and insects, or rules.csv), with its source.`;
    case 'stage':
      return item.detail === null
        ? 'Nobody has recorded the crop’s stage. Record it: the rules hold only at certain stages.'
        : `The stage ${readable(item.detail)} recorded${item.from === null ? '' : ` on ${date(item.from)}`} no longer tells how far the crop is. Record it anew.`;
    case 'weather':
      return `Weather is missing${span}. Add those days to weather.csv.`;
    case 'weather-source':
      return 'The program has several weather sources and none is named for this field. Name one in fields.csv (weather_source).';
    case 'model':
      return 'No heat model in the catalogue.';
    case 'biofix':
      return 'No biofix yet.';
    case 'crop':
      return 'The crop is not in the catalogue.';
    case 'nearby-crop':
      return `Whether ${cropName(item.detail ?? '')} nearby is drawing the moths away is not recorded; the rule’s stricter figure is used.`;
    case 'protection':
      return `The days of protection of ${item.detail} (${date(item.from!)}) are not recorded. Type them from its label.`;
  }
}
