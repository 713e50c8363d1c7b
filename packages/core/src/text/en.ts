/** English. */
import type { Advice, Caution } from '../advice/types.ts';
import { fromCelsius } from '../base/temperature.ts';
import { type Dates, dayFirst, daysLate, monthFirst } from './days.ts';
import { decision, decisionReason } from './decisions.en.ts';
import { doubtLine } from './doubt.en.ts';
import { evidence, noRule, outOfSeason } from './evidence.en.ts';
import { exact, figure, percent } from './figures.ts';
import { grounds, inShort } from './in-short.en.ts';
import { larvaeReason } from './larvae.en.ts';
import { askedReason, closeCall } from './reasons.en.ts';
import { skipReasonWords } from './skip-reason.ts';
import type { Wording, WordingOptions } from './types.ts';
import { unfitReasonWords } from './unfit-reason.ts';
import { cropName, design, event, insectName, plural, productName, regionEnglish, standing, verb } from './words.en.ts';

export function english(options: WordingOptions): Wording {
  const degrees = (valueC: number) => `${Math.round(fromCelsius(valueC, options.temperature))} °${options.temperature}`;
  const date = options.dayOrder === 'month-day' ? monthFirst : dayFirst;
  return {
    language: 'en',
    verb,
    confidence: { high: 'well supported', moderate: 'moderately supported', low: 'weakly supported' },
    standing,
    design,
    condition: { fit: 'fit', doubtful: 'doubtful', unfit: 'unfit' },
    unfitReason: unfitReasonWords.en,
    skipReason: skipReasonWords.en,
    event,
    decision,
    decisionReason,
    day: date,
    figure,
    percent,
    insect: insectName,
    crop: cropName,
    region: regionEnglish,
    rate,
    when: (advice) => when(advice, date),
    headline: (advice) => doubtedHeadline(advice, date),
    inShort: (advice) => inShort(advice, date, (item) => evidence(item, degrees, date, options.temperature)),
    grounds: (advice) => grounds(advice, date, (item) => evidence(item, degrees, date, options.temperature)),
    evidence: (item) => evidence(item, degrees, date, options.temperature),
    caution: (item) => caution(item, date),
  };
}

function rate(advice: Pick<Advice, 'rate' | 'interval'>): string | null {
  if (advice.rate === null || advice.interval === null) return null;
  const [low, high] = advice.interval;
  return `${figure(advice.rate)} a night (${figure(low)}–${figure(high)})`;
}

function when({ verb: said, by, dueSince }: Pick<Advice, 'verb' | 'by' | 'dueSince'>, date: Dates): string | null {
  if (by === null || said === 'none') return null;
  const late = daysLate({ by, dueSince });
  if (late > 0) return `${said === 'watch' ? 'check ' : ''}${plural(late, 'day')} late, since ${date(dueSince!)}`;
  if (said === 'watch') return `check ${date(by)}`;
  if (said === 'covered') return `until ${date(by)}`;
  return `by ${date(by)}`;
}

/** A verb that rests on a doubted trap begins with the doubt. */
function doubtedHeadline(advice: Advice, date: Dates): string {
  const [first, ...because] = advice.because;
  return first?.kind === 'trap-doubt'
    ? `${doubtLine(first, date)} ${doubtedHeadline({ ...advice, because }, date)}`
    : headline(advice, date);
}

function headline(advice: Advice, date: Dates): string {
  const insect = insectName(advice.insect);
  const late = daysLate(advice);
  const by =
    late > 0
      ? `, ${plural(late, 'day')} late (since ${date(advice.dueSince!)})`
      : advice.by === null
        ? ''
        : ` by ${date(advice.by)}`;
  const first = advice.because[0];
  switch (advice.verb) {
    case 'decide': {
      const next =
        advice.intervalDays === null
          ? ''
          : ` While the catch holds, the rule asks for a decision every ${plural(advice.intervalDays, 'day')}.`;
      return `A decision on ${insect} is due${by}, with a licensed adviser.${closeCall(advice)}${next}`;
    }
    case 'scout':
      if (first?.kind === 'larvae') return `Go and look for ${insect}${by}: ${larvaeReason(first, date)}.`;
      if (first?.kind === 'scouting-asked') return `Go and look for ${insect}${by}: ${askedReason(first)}.`;
      return first?.kind === 'event'
        ? `Go and look for ${insect}${by}: ${event[first.event]} ${first.status === 'now' ? 'due now' : 'expected soon'}.`
        : `Go and look for ${insect}${by}.`;
    case 'watch':
      if (first?.kind === 'decision')
        return `Decided ${decision[first.decision]} against ${insect} until ${date(first.holdsUntil)}.`;
      if (late > 0)
        return `Nothing was due on ${insect} when last seen. The check is ${plural(late, 'day')} late (since ${date(advice.dueSince!)}).`;
      return advice.by === null ? `Nothing is due on ${insect}.` : `Nothing is due on ${insect}. Next check ${date(advice.by)}.`;
    case 'covered':
      return `A recorded treatment still covers the field${advice.by === null ? '' : ` until ${date(advice.by)}`}.`;
    case 'blind':
      return first?.kind === 'missing' && first.what === 'rule'
        ? `Duskwatch cannot judge ${insect} here. ${noRule(first.detail)}.`
        : `Duskwatch cannot tell about ${insect} here.`;
    case 'none':
      return first?.kind === 'out-of-season' ? outOfSeason(first, date) : `${insect} and this crop are out of season.`;
  }
}

function caution(item: Caution, date: Dates): string {
  switch (item.kind) {
    case 'label-and-adviser':
      return 'The product label is the law, and local law may be stricter. Decide with a licensed adviser; restricted products need a licensed applicator.';
    case 'bees':
      return 'Protect bees: no treatment on or near bloom where the label forbids it.';
    case 'reentry':
      return `Keep out until ${date(item.until)}${item.at === undefined ? '' : `, ${item.at}`}: re-entry interval of ${exact(item.hours)} hours as entered from the label of ${productName(item.product)}, counted from the ${item.at === undefined ? 'end of the day' : 'hour'} of application.`;
    case 'preharvest': {
      const clash =
        item.harvestOn !== null && item.harvestOn < item.earliestHarvest ? ' The planned harvest falls before that.' : '';
      return `No harvest before ${date(item.earliestHarvest)}: pre-harvest interval as entered from the label of ${productName(item.product)}.${clash}`;
    }
    case 'reads-low':
      return item.why === 'spent-lure'
        ? 'The lure was past its stated life: the true catch is higher than the count.'
        : 'A check behind this rate was doubtful: the true catch may be higher than the count.';
    case 'threshold-is-estimate':
      return 'A threshold is an estimate, not a switch: a week of catches just below it can justify a decision.';
    case 'rule-from-elsewhere':
      return `The rule was made for: ${regionEnglish(item.region)}. Thresholds are local.`;
    case 'rule-design-unstated':
      return 'The source does not say for which trap design its figure was made.';
    case 'designs-not-pooled':
      return `Trap designs catch differently (${item.designs.map((each) => design[each]).join(', ')}): each is read by its own rule.`;
    case 'few-nights':
      return `Only ${plural(item.trapNights, 'trap-night')}: weak evidence.`;
    case 'nothing-caught':
      return `Nothing caught is not nothing there: up to ${figure(item.upTo)} a night would still fit this catch (${percent(item.level)} limit), and the rule begins at ${figure(item.thresholdPerNight)}. More nights or another trap would tell.`;
    case 'stage-old':
      return `The crop’s stage was last seen ${item.ageDays} days ago.`;
  }
}
