/** English for the reason of a verb, in a few words. */
import type { Advice, Evidence } from '../advice/types.ts';
import type { Dates } from './days.ts';
import { figure } from './figures.ts';
import { larvaeReason } from './larvae.en.ts';
import { askedSentence } from './reasons.en.ts';
import { event, plural, readable } from './words.en.ts';

type Of<K extends Evidence['kind']> = Evidence & { readonly kind: K };
type Sentence = (item: Evidence) => string;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What a verb rests on, without what to do about it: a line of a sheet that says that above. */
export function grounds({ verb, because }: Advice, date: Dates, sentence: Sentence): string {
  const first = <K extends Evidence['kind']>(kind: K) => because.find((item): item is Of<K> => item.kind === kind);
  const [lead] = because;
  if (lead?.kind === 'sample') return sample(lead, date) ?? sentence(lead);
  const told = verb === 'scout' ? sent(lead, date) : null;
  if (told) return told;
  return [caught(first('rate'), first('trend')), asks(first('threshold'), first('tier'))].filter(Boolean).join(' ');
}

/** The figure from which a rule acts; null where it speaks of none. */
function asks(threshold: Of<'threshold'> | undefined, tier: Of<'tier'> | undefined): string | null {
  if (threshold) return `The rule: ${figure(threshold.threshold)} a ${threshold.per}.`;
  return tier && tier.from !== null ? `The rule: ${figure(tier.from)} a night and more.` : null;
}

export function inShort({ verb, because }: Advice, date: Dates, sentence: Sentence): string {
  const first = <K extends Evidence['kind']>(kind: K) => because.find((item): item is Of<K> => item.kind === kind);
  const [lead] = because;
  const parts: (string | null)[] = [];
  switch (verb) {
    case 'decide':
      parts.push(
        lead?.kind === 'sample' ? sample(lead, date) : caught(first('rate'), first('trend')),
        stage(first('stage'), date),
      );
      parts.push('Decide with a licensed adviser.');
      break;
    case 'scout':
      parts.push(sent(lead, date), amount(first('sampling')), caught(first('rate'), first('trend')), stage(first('stage'), date));
      break;
    case 'blind':
    case 'none':
      parts.push(lead ? sentence(lead) : null);
      if (verb === 'blind' && lead?.kind !== 'missing') parts.push('Until that is put right, look at the plants yourself.');
      break;
    case 'covered':
      parts.push(lead ? sentence(lead) : null);
      break;
    case 'watch':
      parts.push(lead?.kind === 'decision' ? sentence(lead) : caught(first('rate'), first('trend')));
  }
  return parts.filter((part) => part !== null).join(' ');
}

function caught(rate: Of<'rate'> | undefined, trend: Of<'trend'> | undefined): string | null {
  if (!rate) return null;
  const way = trend === undefined || trend.direction === 'unclear' ? '' : ` and ${trend.direction}`;
  return rate.count === 0
    ? `Nothing caught in ${plural(rate.trapNights, 'trap-night')}.`
    : `Moths at ${figure(rate.perNight)} a night${way}.`;
}

function sample(item: Of<'sample'>, date: Dates): string | null {
  if (item.infested === null) return null;
  const units = `${item.examined} ${readable(item.what)}`;
  if (item.sign === 'egg-masses')
    return `${plural(item.infested, 'egg mass', 'egg masses')} on ${units} on ${date(item.sampledOn)}.`;
  const what = item.sign === 'eggs' ? 'with eggs' : item.sign === 'damaged' ? 'damaged' : 'infested';
  return `${item.infested} of ${units} ${what} on ${date(item.sampledOn)}.`;
}

function sent(lead: Evidence | undefined, date: Dates): string | null {
  if (lead?.kind === 'larvae') return `${capital(larvaeReason(lead, date))}.`;
  if (lead?.kind === 'scouting-asked') return askedSentence(lead);
  if (lead?.kind !== 'event') return null;
  if (lead.status === 'now') return `${capital(event[lead.event])} due now.`;
  return lead.expected === null
    ? `${capital(event[lead.event])} expected soon.`
    : `${capital(event[lead.event])} about ${date(lead.expected.middle)}.`;
}

const amount = (item: Of<'sampling'> | undefined): string | null =>
  item ? `Up to ${item.units} ${readable(item.unit)}, often fewer.` : null;

const stage = (item: Of<'stage'> | undefined, date: Dates): string | null =>
  item ? `${capital(readable(item.stage))} seen ${date(item.observedOn)}.` : null;
