/** Spanish for the reason of a verb, in a few words. */
import type { Advice, Evidence } from '../advice/types.ts';
import { spanishDay as date } from './days.ts';
import { larvaeReason } from './larvae.es.ts';
import { askedSentence } from './reasons.es.ts';
import { capital, event, number, plural, says, stageName, unitName, writes } from './words.es.ts';

type Of<K extends Evidence['kind']> = Evidence & { readonly kind: K };
type Sentence = (item: Evidence) => string;

/** What a verb rests on, without what to do about it: a line of a sheet that says that above. */
export function grounds({ verb, because }: Advice, sentence: Sentence): string {
  const first = <K extends Evidence['kind']>(kind: K) => because.find((item): item is Of<K> => item.kind === kind);
  const [lead] = because;
  if (lead?.kind === 'sample') return sample(lead) ?? sentence(lead);
  const told = verb === 'scout' ? sent(lead) : null;
  if (told) return told;
  return [caught(first('rate'), first('trend')), asks(first('threshold'), first('tier'))].filter(Boolean).join(' ');
}

/** The figure from which a rule acts; null where it speaks of none. */
function asks(threshold: Of<'threshold'> | undefined, tier: Of<'tier'> | undefined): string | null {
  if (threshold) return `La regla: ${number(threshold.threshold)} por ${threshold.per === 'night' ? 'noche' : 'semana'}.`;
  return tier && tier.from !== null ? `La regla: ${number(tier.from)} por noche o más.` : null;
}

export function inShort({ verb, because }: Advice, sentence: Sentence): string {
  const first = <K extends Evidence['kind']>(kind: K) => because.find((item): item is Of<K> => item.kind === kind);
  const [lead] = because;
  const parts: (string | null)[] = [];
  switch (verb) {
    case 'decide':
      parts.push(lead?.kind === 'sample' ? sample(lead) : caught(first('rate'), first('trend')), stage(first('stage')));
      parts.push('Decida con un asesor autorizado.');
      break;
    case 'scout':
      parts.push(sent(lead), amount(first('sampling')), caught(first('rate'), first('trend')), stage(first('stage')));
      break;
    case 'blind':
    case 'none':
      parts.push(lead ? sentence(lead) : null);
      if (verb === 'blind' && lead?.kind !== 'missing') parts.push('Mientras no se arregle, revise usted las plantas.');
      break;
    case 'covered':
      parts.push(lead ? sentence(lead) : null);
      break;
    case 'watch':
      parts.push(lead?.kind === 'decision' ? sentence(lead) : caught(first('rate'), first('trend')));
  }
  return parts.filter((part) => part !== null).join(' ');
}

const WAY = { rising: ' y va en aumento', falling: ' y va a la baja', unclear: '' } as const;

function caught(rate: Of<'rate'> | undefined, trend: Of<'trend'> | undefined): string | null {
  if (!rate) return null;
  if (rate.count === 0) return `Nada capturado en ${plural(rate.trapNights, 'noche-trampa', 'noches-trampa')}.`;
  const night = rate.perNight === 1 ? 'polilla' : 'polillas';
  return `${number(rate.perNight)} ${night} por noche${trend ? WAY[trend.direction] : ''}.`;
}

function sample(item: Of<'sample'>): string | null {
  if (item.infested === null) return null;
  const units = `${item.examined} ${unitName(item.what)}`;
  if (item.sign === 'egg-masses') return `${item.infested} masas de huevos en ${units} el ${date(item.sampledOn)}.`;
  const what = item.sign === 'eggs' ? 'con huevos' : item.sign === 'damaged' ? 'con daño' : 'con el insecto';
  return `${item.infested} de ${units} ${what} el ${date(item.sampledOn)}.`;
}

function sent(lead: Evidence | undefined): string | null {
  if (lead?.kind === 'larvae') return `${capital(larvaeReason(lead, says))}.`;
  if (lead?.kind === 'scouting-asked') return askedSentence(lead, writes);
  if (lead?.kind !== 'event') return null;
  if (lead.status === 'now') return `${capital(event[lead.event])}: ahora.`;
  return lead.expected === null
    ? `${capital(event[lead.event])}: pronto.`
    : `${capital(event[lead.event])}: hacia el ${date(lead.expected.middle)}.`;
}

const amount = (item: Of<'sampling'> | undefined): string | null =>
  item ? `Hasta ${item.units} ${unitName(item.unit)}, a menudo menos.` : null;

const stage = (item: Of<'stage'> | undefined): string | null =>
  item ? `${capital(stageName(item.stage))}, vista el ${date(item.observedOn)}.` : null;
