/** Spanish. */
import type { Advice, Caution } from '../advice/types.ts';
import { fromCelsius } from '../base/temperature.ts';
import { spanishDay as date, daysLate } from './days.ts';
import { decision, decisionReason } from './decisions.es.ts';
import { doubtLine } from './doubt.es.ts';
import { evidence, noRule, outOfSeason } from './evidence.es.ts';
import { grounds, inShort } from './in-short.es.ts';
import { larvaeReason } from './larvae.es.ts';
import { askedReason, closeCall } from './reasons.es.ts';
import { skipReasonWords } from './skip-reason.ts';
import type { Wording, WordingOptions } from './types.ts';
import { unfitReasonWords } from './unfit-reason.ts';
import {
  capital,
  cropName,
  design,
  event,
  given,
  insectName,
  number,
  plural,
  productName,
  regionSpanish,
  says,
  share,
  standing,
  theInsect,
  verb,
  writes,
} from './words.es.ts';

export function spanish(options: WordingOptions): Wording {
  const degrees = (valueC: number) => `${Math.round(fromCelsius(valueC, options.temperature))} °${options.temperature}`;
  return {
    language: 'es',
    verb,
    confidence: { high: 'bien fundado', moderate: 'medianamente fundado', low: 'débilmente fundado' },
    standing,
    design,
    condition: { fit: 'apta', doubtful: 'dudosa', unfit: 'no apta' },
    unfitReason: unfitReasonWords.es,
    skipReason: skipReasonWords.es,
    event,
    decision,
    decisionReason,
    day: date,
    figure: number,
    percent: share,
    insect: insectName,
    crop: cropName,
    region: regionSpanish,
    rate,
    when,
    headline: doubtedHeadline,
    inShort: (advice) => inShort(advice, (item) => evidence(item, degrees, options.temperature)),
    grounds: (advice) => grounds(advice, (item) => evidence(item, degrees, options.temperature)),
    evidence: (item) => evidence(item, degrees, options.temperature),
    caution,
  };
}

function rate(advice: Pick<Advice, 'rate' | 'interval'>): string | null {
  if (advice.rate === null || advice.interval === null) return null;
  const [low, high] = advice.interval;
  return `${number(advice.rate)} por noche (${number(low)}–${number(high)})`;
}

function when({ verb: said, by, dueSince }: Pick<Advice, 'verb' | 'by' | 'dueSince'>): string | null {
  if (by === null || said === 'none') return null;
  const late = daysLate({ by, dueSince });
  if (late > 0) return `${said === 'watch' ? 'revisar, ' : ''}${plural(late, 'día')} de retraso, desde el ${date(dueSince!)}`;
  if (said === 'watch') return `revisar ${date(by)}`;
  if (said === 'covered') return `hasta ${date(by)}`;
  return `a más tardar ${date(by)}`;
}

/** Un verbo que se apoya en una trampa dudosa empieza por la duda. */
function doubtedHeadline(advice: Advice): string {
  const [first, ...because] = advice.because;
  return first?.kind === 'trap-doubt'
    ? `${doubtLine(first, date, number)} ${doubtedHeadline({ ...advice, because })}`
    : headline(advice);
}

function headline(advice: Advice): string {
  const insect = theInsect(advice.insect);
  const late = daysLate(advice);
  const by =
    late > 0
      ? `, con ${plural(late, 'día')} de retraso (desde el ${date(advice.dueSince!)})`
      : advice.by === null
        ? ''
        : ` a más tardar el ${date(advice.by)}`;
  const first = advice.because[0];
  switch (advice.verb) {
    case 'decide': {
      const next =
        advice.intervalDays === null
          ? ''
          : ` Mientras se mantenga la captura, la regla pide una decisión cada ${plural(advice.intervalDays, 'día')}.`;
      return `Toca decidir sobre ${insect}${by}, con un asesor autorizado.${closeCall(advice, writes)}${next}`;
    }
    case 'scout':
      if (first?.kind === 'larvae') return `Vaya a buscar ${insect}${by}: ${larvaeReason(first, says)}.`;
      if (first?.kind === 'scouting-asked') return `Vaya a buscar ${insect}${by}: ${askedReason(first, writes)}.`;
      return first?.kind === 'event'
        ? `Vaya a buscar ${insect}${by}: ${event[first.event]}, ${first.status === 'now' ? 'ahora' : 'pronto'}.`
        : `Vaya a buscar ${insect}${by}.`;
    case 'watch':
      if (first?.kind === 'decision')
        return `Se decidió ${decision[first.decision]} contra ${insect} hasta el ${date(first.holdsUntil)}.`;
      if (late > 0)
        return `Nada había pendiente sobre ${insect} la última vez que se miró. La revisión lleva ${plural(late, 'día')} de retraso (desde el ${date(advice.dueSince!)}).`;
      return advice.by === null
        ? `Nada pendiente sobre ${insect}.`
        : `Nada pendiente sobre ${insect}. Próxima revisión: el ${date(advice.by)}.`;
    case 'covered':
      return `Un tratamiento registrado todavía cubre la parcela${advice.by === null ? '' : ` hasta el ${date(advice.by)}`}.`;
    case 'blind':
      return first?.kind === 'missing' && first.what === 'rule'
        ? `Duskwatch no puede juzgar aquí ${insect}. ${noRule(first.detail)}.`
        : `Duskwatch no puede saber qué pasa aquí con ${insect}.`;
    case 'none':
      return first?.kind === 'out-of-season' ? outOfSeason(first) : `${capital(insect)} y este cultivo están fuera de temporada.`;
  }
}

function caution(item: Caution): string {
  switch (item.kind) {
    case 'label-and-adviser':
      return 'La etiqueta del producto es la ley, y la ley local puede ser más estricta. Decida con un asesor autorizado; los productos restringidos exigen un aplicador autorizado.';
    case 'bees':
      return 'Proteja a las abejas: ningún tratamiento sobre la floración o cerca de ella donde la etiqueta lo prohíba.';
    case 'reentry':
      return `No entre hasta ${item.at === undefined ? `pasado el ${date(item.until)}` : `el ${date(item.until)} a las ${item.at}`}: intervalo de reingreso de ${given(item.hours)} horas, tomado de la etiqueta de ${productName(item.product)} y contado desde ${item.at === undefined ? 'el final del día' : 'la hora'} de aplicación.`;
    case 'preharvest': {
      const clash =
        item.harvestOn !== null && item.harvestOn < item.earliestHarvest ? ' La cosecha prevista cae antes de esa fecha.' : '';
      return `No coseche antes del ${date(item.earliestHarvest)}: intervalo previo a la cosecha tomado de la etiqueta de ${productName(item.product)}.${clash}`;
    }
    case 'reads-low':
      return item.why === 'spent-lure'
        ? 'El atrayente había pasado su vida indicada: la captura verdadera es mayor que la contada.'
        : 'Una revisión de esta tasa fue dudosa: la captura verdadera puede ser mayor que la contada.';
    case 'threshold-is-estimate':
      return 'Un umbral es una estimación, no un interruptor: una semana de capturas justo por debajo puede justificar una decisión.';
    case 'rule-from-elsewhere':
      return `La regla se hizo para: ${regionSpanish(item.region)}. Los umbrales son locales.`;
    case 'rule-design-unstated':
      return 'La fuente no dice para qué diseño de trampa vale su cifra.';
    case 'designs-not-pooled':
      return `Los diseños de trampa capturan de forma distinta (${item.designs.map((each) => design[each]).join(', ')}): cada uno se lee con su propia regla.`;
    case 'few-nights':
      return `Solo ${plural(item.trapNights, 'noche-trampa', 'noches-trampa')}: indicio débil.`;
    case 'nothing-caught':
      return `Nada capturado no es nada presente: hasta ${number(item.upTo)} por noche cabrían aún en esta captura (límite del ${share(item.level)}), y la regla empieza en ${number(item.thresholdPerNight)}. Más noches u otra trampa lo dirían.`;
    case 'stage-old':
      return `La etapa del cultivo se vio por última vez hace ${item.ageDays} días.`;
  }
}
