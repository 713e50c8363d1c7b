/** Spanish for what advice rests on. */
import type { Evidence, StageHeat, VisitScatter } from '../advice/types.ts';
import { degreeDaysFrom, type TemperatureUnit } from '../base/temperature.ts';
import { citation } from '../catalogue/index.ts';
import { spanishDay as date } from './days.ts';
import { decision, decisionReason } from './decisions.es.ts';
import { doubtSentence } from './doubt.es.ts';
import { fine, heatSpan } from './figures.ts';
import { larvaeSentence } from './larvae.es.ts';
import { askedSentence, choiceOpenSentence, otherRuleSentence, ruleOffSentence, sampleSentence } from './reasons.es.ts';
import {
  capital,
  cropName,
  design,
  event,
  given,
  number,
  PER,
  plural,
  productName,
  readable,
  SIGN,
  says,
  share,
  spoken,
  stageName,
  standing,
  unitName,
  writes,
} from './words.es.ts';

/** Where the crop may be by now, where that is not only the stage seen. */
function carried({ now, ageDays }: Evidence & { kind: 'stage' }, unit: TemperatureUnit): string {
  if (now === null || ageDays === 0) return '';
  const span = now.from === now.to ? `en ${stageName(now.to)}` : `entre ${stageName(now.from)} y ${stageName(now.to)}`;
  return ` ${now.heat === null ? 'Por el calendario' : byHeat(now.heat, unit)} puede estar ahora ${span}${now.mayBeSince === null ? '' : `, en una etapa de las reglas desde el ${date(now.mayBeSince)} como muy pronto`}.`;
}

function byHeat(heat: StageHeat, shown: TemperatureUnit): string {
  const written = (value: number) => String(Math.round(degreeDaysFrom(value, heat.unit, shown)));
  const sums = `${written(heat.fast)}–${written(heat.slow)} de la siembra a la cosecha`;
  const from = heat.ofField
    ? 'lo que trajeron años pasados entre las fechas anotadas de esta parcela'
    : [citation(heat.source), standing[heat.standing]].filter((part) => part !== null).join('; ');
  return `Por el calor (${written(heat.degreeDays)} °${shown}·d desde entonces; ${sums}: ${from})`;
}

export function outOfSeason(item: Evidence & { kind: 'out-of-season' }): string {
  switch (item.why) {
    case 'not-a-host':
      return 'El catálogo no conoce que este insecto se alimente de este cultivo.';
    case 'no-rule':
      return 'No hay regla para este cultivo, y aquí nadie trampea ni muestrea el insecto.';
    case 'not-planted':
      return `No se siembra antes del ${date(item.date!)}.`;
    case 'harvested':
      return `Cosechado el ${date(item.date!)}.`;
    case 'harvest-stop':
      return `Faltan menos de ${item.days} días para la cosecha (${date(item.date!)}): la regla no pide nada más.`;
    case 'stage':
      return 'El cultivo no está en una etapa en la que valgan las reglas.';
  }
}

export function evidence(item: Evidence, degrees: (valueC: number) => string, unit: TemperatureUnit): string {
  switch (item.kind) {
    case 'out-of-season':
      return outOfSeason(item);
    case 'stage':
      return `Etapa del cultivo: ${stageName(item.stage)}, vista el ${date(item.observedOn)} (hace ${plural(item.ageDays, 'día')}); ${
        item.needed.length === 0
          ? 'las reglas valen en cualquier etapa'
          : `las reglas valen en ${item.needed.map(stageName).join(', ')}`
      }.${carried(item, unit)}`;
    case 'rate': {
      const spread = item.k === null ? 'gamma–Poisson' : `binomial negativa, k ${spoken(fine(item.k))}, ${scatter(item.scatter)}`;
      if (item.count === 0)
        return `Nada en ${plural(item.trapNights, 'noche-trampa', 'noches-trampa')} (${design[item.design]}): hasta ${number(item.high)} por trampa y noche serían todavía posibles, límite del ${share(item.level)} (${spread}).`;
      return `${plural(item.count, 'polilla')} en ${plural(item.trapNights, 'noche-trampa', 'noches-trampa')} (${design[item.design]}): ${number(item.perNight)} por trampa y noche, intervalo del ${share(item.level)} ${number(item.low)}–${number(item.high)} (${spread}).`;
    }
    case 'threshold':
      return `La cifra de la regla es ${given(item.threshold)} por trampa y ${PER[item.per]}${
        item.nearbyCrop === null ? '' : ` mientras ${cropName(item.nearbyCrop)} cercano atrae a las polillas`
      }; la captura es de ${spoken(fine(item.rate))}, ${item.reached ? 'y la alcanza' : 'por debajo'}. Probabilidad de que la tasa verdadera esté por encima: ${share(item.probabilityAbove)}.`;
    case 'tier':
      return item.intervalDays === null
        ? `${number(item.rate)} por trampa y noche está por debajo del primer escalón de la regla, ${given(item.below ?? 0)}. Probabilidad de que la tasa verdadera lo supere: ${share(item.probabilityAbove)}.`
        : `${number(item.rate)} por trampa y noche cae en el escalón ${item.below === null ? `por encima de ${given(item.from!)}` : `${given(item.from!)}–${given(item.below)}`}: ${plural(item.intervalDays, 'día')} entre decisiones de protección.`;
    case 'weather-adjustment': {
      const condition = `máximas diarias ${item.when === 'maxima-below' ? 'por debajo' : 'por encima'} de ${degrees(item.temperatureC)} en los últimos ${item.days} días`;
      const days = Math.abs(item.addDays) === 1 ? 'un día' : plural(Math.abs(item.addDays), 'día');
      const change = `${days} más ${item.addDays > 0 ? 'largo' : 'corto'}`;
      if (item.applied === null) return `No se sabe: ${condition} harían el intervalo ${change}; faltan datos del tiempo.`;
      return item.applied
        ? `${capital(condition)}: el intervalo es ${change}.`
        : `Las máximas diarias no estuvieron ${item.when === 'maxima-below' ? 'por debajo' : 'por encima'} de ${degrees(item.temperatureC)} en cada uno de los últimos ${item.days} días: el intervalo no cambia.`;
    }
    case 'accumulation':
      return `En las últimas ${plural(item.nights, 'noche')} una trampa capturó ${number(item.perTrap)} en total, el ${share(item.share)} de lo que daría el umbral cada noche (${number(item.atThreshold)})${item.addsUp ? ': la puesta se acumula aun por debajo del umbral' : ''}.`;
    case 'capture-chance': {
      const { moths, nights, probability, from, to, trapId } = item;
      return `Una captura intensa (${moths} o más en ${nights} noches) entre revisiones de la trampa ${trapId}, del ${date(from)} al ${date(to)}, no es probable: ${share(probability)}${captureRests(item.assumed)}. Nada se fecha a partir de ella.`;
    }
    case 'biofix':
      return biofixSentence(item);
    case 'event':
      return eventSentence(item, unit);
    case 'sample':
      return sampleSentence(item, writes);
    case 'scouting-asked':
      return askedSentence(item, writes);
    case 'treatment': {
      const covers =
        item.coversUntil === null
          ? 'nada de lo registrado dice cuánto protege'
          : `${item.state === 'covering' ? 'cubre hasta el' : 'cubrió hasta el'} ${date(item.coversUntil)}${coverEnd(item)}`;
      return `Tratamiento del ${date(item.appliedOn)} con ${productName(item.product)}: ${covers}.`;
    }
    case 'decision':
      return `El ${date(item.decidedOn)} se decidió ${decision[item.decision]}, porque ${decisionReason[item.reason]}${item.note === null ? '' : ` («${item.note}»)`}; la pregunta vuelve el ${date(item.holdsUntil)}, ${decisionHolds(item)}.`;
    case 'trap-unusable':
      return `La trampa ${item.trapId} (${design[item.design]}) ${unusable(item)}.`;
    case 'trap-doubt':
      return doubtSentence(item, date, number);
    case 'lure-spent':
      return `El atrayente de la trampa ${item.trapId} tenía ${item.ageDays} días, ${item.ageDays - item.lifeDays} más que su vida indicada de ${item.lifeDays}: la captura se lee baja.`;
    case 'lure-unknown':
      return `No se sabe la edad del atrayente de ${item.trapIds.join(', ')}.`;
    case 'missing':
      return missing(item);
    case 'other-rule':
      return otherRuleSentence(item, writes);
    case 'rule-off':
      return ruleOffSentence(item);
    case 'choice-open':
      return choiceOpenSentence(item);
    case 'other-design':
      return `Aquí hay también otro diseño (${design[item.design]}): ${number(item.perNight)} por noche${
        item.adjusted === null || item.against === null
          ? '; sin proporción publicada entre los diseños'
          : `, equivalente en ${design[item.against]} a unas ${number(item.adjusted[0])}–${number(item.adjusted[1])} (${citation(item.source) ?? 'práctica común, sin fuente'})`
      }. Los diseños no se mezclan.`;
    case 'sampling':
      return `Revise ${item.units} ${unitName(item.unit)}${item.places === null ? '' : ` en ${item.places} sitios`} en busca de ${SIGN[item.sign] ?? readable(item.sign)}; la cifra es ${item.sign === 'egg-masses' ? `1 en ${spoken(fine(1 / item.share))} ${unitName(item.unit)}` : share(item.share)} (${citation(item.source) ?? 'práctica común, sin fuente'}).`;
    case 'larvae':
      return larvaeSentence(item, design[item.design], standing[item.standing], says, unit);
    case 'trend':
      return item.direction === 'unclear'
        ? `Sin tendencia clara en las últimas ${item.visits} visitas (${design[item.design]}).`
        : `La captura va en ${item.direction === 'rising' ? 'aumento' : 'descenso'} en las últimas ${item.visits} visitas (${design[item.design]}).`;
    case 'question':
      return item.question === 'many-look-alikes'
        ? `La trampa ${item.trapId} tenía ${item.got} polillas de otras especies junto a ${item.before} de la buscada el ${date(item.on)}: conviene mirar otra vez las parecidas.`
        : `La trampa ${item.trapId} contó ${item.got} el ${date(item.on)} después de quedar ${item.before} dentro: pregunte a quien la revisó.`;
  }
}

function biofixName(rule: (Evidence & { kind: 'biofix' })['rule']): string {
  switch (rule.kind) {
    case 'first-catch':
      return 'Primera captura';
    case 'sustained-catch':
      return 'Primera captura sostenida';
    case 'intense-capture':
      return `Captura intensa (${rule.moths} o más en ${rule.nights} noches)`;
    case 'user':
      return 'Biofix fijado a mano';
  }
}

/** Which of the two figures ends the cover of a treatment. */
function coverEnd({ endsBy, intervalDays, protectsUntil }: Evidence & { kind: 'treatment' }): string {
  switch (endsBy) {
    case 'label':
      return ', cuando termina la protección anotada de su etiqueta';
    case 'rule':
      return `, por la regla: con esta captura pide una decisión cada ${plural(intervalDays!, 'día')}${
        protectsUntil === null ? '' : `, antes de que termine la protección anotada de la etiqueta (${date(protectsUntil)})`
      }`;
    default:
      return ', supuesto: no se conocen ni los días de protección de la etiqueta ni un intervalo de la regla';
  }
}

function scatter({ from, low, high, visits, traps }: VisitScatter): string {
  const span = `entre ${spoken(fine(low))} y ${spoken(fine(high))}`;
  return from === 'own-checks'
    ? `${span} según ${plural(visits, 'revisión', 'revisiones')} de ${plural(traps, 'trampa')} de este programa: cuánto varían las visitas de una misma trampa`
    : `${span} como se supone mientras el programa tiene pocas revisiones propias: cuánto varían las visitas de una misma trampa`;
}

function decisionHolds({ by, days }: Evidence & { kind: 'decision' }): string {
  if (by === 'sample-life') return `como tras una muestra, a los ${plural(days, 'día')}`;
  return by === 'rule'
    ? `por el intervalo de la regla de ${plural(days, 'día')} con esta captura`
    : `a los ${plural(days, 'día')}, supuesto: la regla no da un intervalo`;
}

/** Las cifras nuestras detrás de una captura entre revisiones. */
const captureRests = ({ k, likely }: (Evidence & { kind: 'capture-chance' })['assumed']): string =>
  ` (si las noches sueltas varían con k ${given(k)}; se da por ocurrida desde el ${share(likely)}: cifras elegidas por Duskwatch)`;

function biofixSentence({ rule, on, earliest, running, probability, assumed, trapId }: Evidence & { kind: 'biofix' }): string {
  const where = trapId === null ? '' : ` en la trampa ${trapId}`;
  const chance =
    probability === null || probability > 0.995
      ? ''
      : `, con una probabilidad del ${share(probability)}${assumed === null ? '' : captureRests(assumed)}`;
  if (running)
    return `El vuelo ya había empezado cuando se colgó la trampa ${trapId}: ${biofixName(rule).toLowerCase()} a más tardar el ${date(on)}, ${
      earliest === null ? 'y nada dice cuánto antes' : `y no antes del ${date(earliest)} según otras trampas o años anteriores`
    }${chance}.`;
  return `${biofixName(rule)} el ${date(on)}${where}${earliest === null || earliest === on ? '' : ` (pudo ser desde el ${date(earliest)})`}${chance}.`;
}

function eventSentence(item: Evidence & { kind: 'event' }, unit: TemperatureUnit): string {
  const { span, published } = heatSpan(item, unit, given);
  const soFar = Math.round(degreeDaysFrom(item.heatSoFar, item.unit, unit));
  const heat = `calor hasta el ${date(item.heatThrough)}: ${soFar} de ${span}${published === null ? '' : `, publicado como ${published}`}${item.bridgedDays === 0 ? '' : `, ${plural(item.bridgedDays, 'día sin datos interpolado', 'días sin datos interpolados')}`}${item.filledDays === 0 ? '' : `, ${plural(item.filledDays, 'día', 'días')} de ${item.filledFrom}`}`;
  const name = `${capital(event[item.event])}${item.start === null ? '' : ', a más tardar'}`;
  if (item.status === 'now') return `${name}: ahora (${heat}).${begun(item)}`;
  if (item.status === 'past') return `${name}: ya pasó (${heat}).`;
  if (item.expected === null) return `${name}: por venir, fecha desconocida (${heat}).`;
  const { early, middle, late, lateOpen, method, years } = item.expected;
  const { forecastThrough } = item.expected;
  if (method === 'own-forecast') return `${name}: el ${date(middle)}, según su propio pronóstico del tiempo (${heat}).`;
  const after = forecastThrough === null ? '' : `, después de su propio pronóstico hasta el ${date(forecastThrough)}`;
  const how =
    method === 'past-years'
      ? `según ${plural(years, 'año anterior', 'años anteriores')} de esta fuente${after}`
      : method === 'normals'
        ? `según las normales mensuales de esta fuente, que tiene muy pocos años propios${after}`
        : `si los próximos días son como los últimos 14${after}`;
  return `${name}: hacia el ${date(middle)}, entre el ${date(early)} y el ${date(late)}${lateOpen ? ' o después' : ''} ${how} (${heat}).${begun(item)}`;
}

/** By when it may have come already, where the start of the model is not sure. */
function begun({ start, expected }: Evidence & { kind: 'event' }): string {
  if (start === null) return '';
  if (start.earliest === null) return ' No se sabe cuánto antes pudo llegar.';
  return expected === null
    ? ''
    : ` Pudo llegar desde el ${date(expected.early)}, pues el comienzo pudo ser del ${date(start.earliest)} al ${date(start.latest)}.`;
}

function unusable(item: Evidence & { kind: 'trap-unusable' }): string {
  const nights = item.nights === null ? '' : ` ${plural(item.nights, 'noche')}`;
  const since = item.since === null ? '' : ` desde el ${date(item.since)}`;
  switch (item.why) {
    case 'never-checked':
      return `todavía no se ha revisado${since}`;
    case 'overdue':
      return `lleva${nights || ' demasiado tiempo'} sin revisar: última visita ${item.since === null ? 'desconocida' : date(item.since)}`;
    case 'unfit':
      return `se encontró no apta: no se sabe nada de${nights || ' esas noches'}${since}`;
    case 'count-went-down':
      return 'contó menos de lo que quedaba dentro: hay que preguntar a quien la revisó';
    case 'left-uncounted':
      return 'se visitó pero no se contó: no contado no es cero';
    case 'not-hung':
      return 'todavía no se ha colgado';
    case 'taken-down':
      return 'se ha retirado';
  }
}

function missing(item: Evidence & { kind: 'missing' }): string {
  const span =
    item.from === null
      ? ''
      : item.to === null || item.to === item.from
        ? ` del ${date(item.from)}`
        : ` del ${date(item.from)} al ${date(item.to)}`;
  switch (item.what) {
    case 'trap':
      return 'Ninguna trampa informa sobre esta parcela. Cuelgue una, o añada la parcela a una trampa cercana.';
    case 'rule':
      return `${noRule(item.detail)}. Añada una propia (Reglas e insectos, o rules.csv), con su fuente.`;
    case 'stage':
      return item.detail === null
        ? 'Nadie ha registrado la etapa del cultivo. Regístrela: las reglas solo valen en ciertas etapas.'
        : `La etapa ${stageName(item.detail)}${item.from === null ? '' : `, registrada el ${date(item.from)},`} ya no dice por dónde va el cultivo. Regístrela de nuevo.`;
    case 'weather':
      return `Faltan datos del tiempo${span}. Añada esos días a weather.csv.`;
    case 'weather-source':
      return 'El programa tiene varias fuentes del tiempo y ninguna está asignada a esta parcela. Asígnela en fields.csv (weather_source).';
    case 'model':
      return 'No hay modelo de calor en el catálogo.';
    case 'biofix':
      return 'Todavía no hay biofix.';
    case 'crop':
      return 'El cultivo no está en el catálogo.';
    case 'nearby-crop':
      return `No está registrado si ${cropName(item.detail ?? '')} cercano atrae a las polillas; se usa la cifra más estricta de la regla.`;
    case 'protection':
      return `No están anotados los días de protección de ${item.detail} (${date(item.from!)}). Tómelos de su etiqueta.`;
  }
}

/** Puede faltar una regla para el cultivo o para las trampas de un diseño. */
export const noRule = (detail: string | null): string => {
  if (detail === null) return 'Ninguna regla corresponde';
  return detail in design
    ? `No hay regla hecha para este diseño (${design[detail as keyof typeof design]})`
    : `No hay regla para este cultivo (${cropName(detail)})`;
};
