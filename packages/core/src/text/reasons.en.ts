/** English for why somebody is to look at the plants, what a sample says, and which rules stand beside the one that speaks. */
import type { Advice, Evidence } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';
import { citation, insectById, regionName } from '../catalogue/index.ts';
import { exact, figure, fine, percent } from './figures.ts';
import type { Wording } from './types.ts';

type Of<K extends Evidence['kind']> = Evidence & { readonly kind: K };
type Dates = (day: IsoDay) => string;

const readable = (word: string) => word.replaceAll('-', ' ');
const insectName = (id: string) => insectById(id)?.commonName.en ?? id;
const place = (region: string) => (region === '' ? '' : ` (${regionName(region).en})`);

/** The reason within a sentence: `Go and look for … by Fri 11 July: the catch has reached its rule, …`. */
export function askedReason({ why, madeFor }: Of<'scouting-asked'>): string {
  const elsewhere =
    madeFor.length === 0 ? '' : `; that figure is for ${madeFor.map(readable).join(' and ')}, and now the plants decide`;
  switch (why) {
    case 'catch-above':
      return `the catch has reached its rule, which sends people to look and leaves the decision to what they find${elsewhere}`;
    case 'catch-near':
      return `the catch is close to its rule${elsewhere}`;
    case 'catch-rising':
      return `the catch is rising towards its rule${elsewhere}`;
    case 'catch-adds-up':
      return `the catch adds up below its rule${elsewhere}`;
    case 'stage-unseen':
      return `look at the crop’s stage, it may be at ${madeFor.map(readable).join(' or ')}; the catch is already above the rule`;
    case 'sample-small':
      return 'the last sample found some, and is too small to say whether the rule is reached';
    case 'sample-clean':
      return 'the catch has reached its rule and the last sample found nothing: a high catch asks for a better look';
  }
}

export const askedSentence = (item: Of<'scouting-asked'>): string => {
  const reason = askedReason(item);
  return `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;
};

/** Said in the first line where the figure found lies so close to the rule's that the truth may lie on its other side. */
export function closeCall(advice: Advice): string {
  const first = advice.because[0];
  if (first?.kind === 'sample') {
    const { low, high, ruleShare } = first;
    if (low === null || high === null || ruleShare === null || low > ruleShare || high < ruleShare) return '';
    return ` It is close: the sample leaves ${span(first)} possible, and the rule’s figure of ${share(first, ruleShare)} lies in between.`;
  }
  if (advice.interval === null || advice.probabilityAbove === null || advice.probabilityAbove >= SURE_ENOUGH) return '';
  const [low, high] = advice.interval;
  return ` It is close: the true rate may lie anywhere from ${figure(low)} to ${figure(high)} a night, above the rule with a probability of ${percent(advice.probabilityAbove)}.`;
}

const SURE_ENOUGH = 0.9;

/** A share of units; egg masses are a number to so many plants. */
const share = ({ sign, what }: Of<'sample'>, value: number): string =>
  sign === 'egg-masses' ? (value === 0 ? 'none' : `1 on ${fine(1 / value)} ${readable(what)}`) : percent(value);

const span = (item: Of<'sample'>): string => `${share(item, item.low!)} to ${share(item, item.high!)}`;

export function sampleSentence(item: Of<'sample'>, date: Dates): string {
  const found =
    item.infested === null
      ? 'nobody wrote how many were infested'
      : item.sign === 'egg-masses'
        ? `${item.infested} ${item.infested === 1 ? 'egg mass' : 'egg masses'}`
        : `${item.infested} ${item.sign === 'eggs' ? 'with eggs' : item.sign === 'damaged' ? 'damaged' : 'infested'}`;
  return `Sample of ${date(item.sampledOn)}: ${item.examined} ${readable(item.what)} looked at, ${found}; ${held(item)}.${clumped(item)}`;
}

function clumped({ clumped: likeness }: Of<'sample'>): string {
  if (likeness === null) return '';
  const { correlation, samples } = likeness;
  const by = samples === 0 ? 'assumed' : `from ${samples} of your own samples, written down place by place`;
  return ` Infested ones stand together, so neighbours tell less than as many plants far apart (likeness ${fine(correlation)}, ${by}): standing anywhere, this sample would have been read otherwise.`;
}

function held(item: Of<'sample'>): string {
  if (item.ruleShare === null) return 'no figure in the rules fits this kind of sample';
  const rule = `the rule’s ${share(item, item.ruleShare)}${item.withInsect === null ? '' : ` (together with ${insectName(item.withInsect)})`}`;
  if (item.verdict === null || item.share === null) return `not known against ${rule}`;
  const limits = `${share(item, item.share)}, likely between ${share(item, item.low!)} and ${share(item, item.high!)}`;
  switch (item.verdict) {
    case 'above':
      return `${limits}: ${item.settledBy === 'full-sample' ? 'as large a sample as the rule asks for, and not below' : 'above'} ${rule}`;
    case 'below':
      return `${limits}: ${item.settledBy === 'full-sample' ? 'as large a sample as the rule asks for, and below' : 'below'} ${rule}`;
    case 'not-yet':
      return `${limits}: too few to tell from ${rule}. Look at ${item.more} more`;
  }
}

export function otherRuleSentence(item: Of<'other-rule'>, verb: Wording['verb']): string {
  const figures = item.threshold === null ? 'another figure' : `${exact(item.threshold)} per ${item.per}`;
  const stages = item.stages.length === 0 ? '' : ` at ${item.stages.map(readable).join(', ')}`;
  const cited = citation(item.source);
  return `Another rule${place(item.region)}: ${figures}${stages}. By it: ${verb[item.verb]}.${cited === null ? '' : ` ${cited}.`}`;
}

export const ruleOffSentence = ({ region, reason }: Of<'rule-off'>): string =>
  `A rule${place(region)} is switched off for this program: ${reason}. It does not speak here.`;

export const choiceOpenSentence = (item: Of<'choice-open'>): string =>
  `Rules of several regions fit, and this program has not said which holds here: the strictest${place(item.region)} speaks. Choose the region under Settings, with your adviser.`;
