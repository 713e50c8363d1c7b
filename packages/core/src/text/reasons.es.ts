/** Español: por qué hay que ir a mirar las plantas, qué dice una muestra y qué reglas hay además de la que vale. */
import type { Advice, Evidence } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';
import { citation, insectById, regionName } from '../catalogue/index.ts';
import type { Wording } from './types.ts';

type Of<K extends Evidence['kind']> = Evidence & { readonly kind: K };

/** Cómo se escriben días, cifras y palabras del catálogo; lo da el resto del idioma. */
export interface SpanishWrites {
  readonly date: (day: IsoDay) => string;
  readonly number: (value: number) => string;
  readonly given: (value: number) => string;
  readonly fine: (value: number) => string;
  readonly share: (value: number) => string;
  readonly unit: (unit: string) => string;
  readonly stage: (stage: string) => string;
  readonly verb: Wording['verb'];
}

const insectName = (id: string) => insectById(id)?.commonName.es ?? id;
const place = (region: string) => (region === '' ? '' : ` (${regionName(region).es})`);

/** El motivo dentro de una frase: `Vaya a buscar … a más tardar el vie 11 de julio: la captura alcanzó su regla, …`. */
export function askedReason({ why, madeFor }: Of<'scouting-asked'>, { stage }: SpanishWrites): string {
  const elsewhere =
    madeFor.length === 0 ? '' : `; esa cifra es para ${madeFor.map(stage).join(' y ')}, y ahora deciden las plantas`;
  switch (why) {
    case 'catch-above':
      return `la captura alcanzó su regla, que manda a revisar y deja la decisión a lo que se encuentre${elsewhere}`;
    case 'catch-near':
      return `la captura está cerca de su regla${elsewhere}`;
    case 'catch-rising':
      return `la captura va subiendo hacia su regla${elsewhere}`;
    case 'catch-adds-up':
      return `la captura se acumula por debajo de su regla${elsewhere}`;
    case 'stage-unseen':
      return `mire la etapa del cultivo, puede estar en ${madeFor.map(stage).join(' o ')}; la captura ya supera la regla`;
    case 'sample-small':
      return 'la última muestra halló algo y es demasiado pequeña para saber si se alcanza la regla';
    case 'sample-clean':
      return 'la captura alcanzó su regla y la última muestra no halló nada: una captura alta pide revisar mejor';
  }
}

export function askedSentence(item: Of<'scouting-asked'>, says: SpanishWrites): string {
  const reason = askedReason(item, says);
  return `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`;
}

/** Se dice en la primera línea cuando lo hallado está tan cerca de la cifra que la verdad puede estar al otro lado. */
export function closeCall(advice: Advice, says: SpanishWrites): string {
  const first = advice.because[0];
  if (first?.kind === 'sample') {
    const { low, high, ruleShare } = first;
    if (low === null || high === null || ruleShare === null || low > ruleShare || high < ruleShare) return '';
    return ` Está cerca: la muestra deja posible de ${share(first, low, says)} a ${share(first, high, says)}, y la cifra de la regla, ${share(first, ruleShare, says)}, queda en medio.`;
  }
  if (advice.interval === null || advice.probabilityAbove === null || advice.probabilityAbove >= SURE_ENOUGH) return '';
  const [low, high] = advice.interval;
  return ` Está cerca: la tasa verdadera puede estar entre ${says.number(low)} y ${says.number(high)} por noche, y por encima de la regla con una probabilidad del ${says.share(advice.probabilityAbove)}.`;
}

const SURE_ENOUGH = 0.9;

/** Una proporción de unidades; las masas de huevos se dicen por tantas plantas. */
const share = ({ sign, what }: Of<'sample'>, value: number, says: SpanishWrites): string =>
  sign === 'egg-masses' ? (value === 0 ? 'ninguna' : `1 en ${says.fine(1 / value)} ${says.unit(what)}`) : says.share(value);

export function sampleSentence(item: Of<'sample'>, says: SpanishWrites): string {
  const found =
    item.infested === null
      ? 'nadie anotó cuántas unidades infestadas'
      : item.sign === 'egg-masses'
        ? `${item.infested} ${item.infested === 1 ? 'masa de huevos' : 'masas de huevos'}`
        : `${item.infested} ${item.sign === 'eggs' ? 'con huevos' : item.sign === 'damaged' ? 'con daño' : 'con infestación'}`;
  return `Muestra del ${says.date(item.sampledOn)}: ${item.examined} ${says.unit(item.what)}, ${found}; ${held(item, says)}.${clumped(item, says)}`;
}

function clumped({ clumped: likeness }: Of<'sample'>, says: SpanishWrites): string {
  if (likeness === null) return '';
  const { correlation, samples } = likeness;
  const by =
    samples === 0
      ? 'supuesto'
      : `de ${samples} ${samples === 1 ? 'muestra propia anotada' : 'muestras propias anotadas'} punto por punto`;
  return ` Las infestadas están juntas, y las vecinas dicen menos que otras tantas alejadas (parecido ${says.fine(correlation)}, ${by}): repartidas al azar, esta muestra se habría leído de otro modo.`;
}

function held(item: Of<'sample'>, says: SpanishWrites): string {
  if (item.ruleShare === null) return 'ninguna cifra de las reglas corresponde a este tipo de muestra';
  const said = (value: number) => share(item, value, says);
  const rule = `la cifra de la regla, ${said(item.ruleShare)}${item.withInsect === null ? '' : ` (junto con ${insectName(item.withInsect)})`}`;
  if (item.verdict === null || item.share === null) return `no se sabe frente a ${rule}`;
  const limits = `${said(item.share)}, probablemente entre ${said(item.low!)} y ${said(item.high!)}`;
  const full = item.settledBy === 'full-sample' ? 'una muestra tan grande como pide la regla, y ' : '';
  switch (item.verdict) {
    case 'above':
      return `${limits}: ${full}${full === '' ? 'por encima de' : 'no por debajo de'} ${rule}`;
    case 'below':
      return `${limits}: ${full}por debajo de ${rule}`;
    case 'not-yet':
      return `${limits}: muy pocas para distinguirlo de ${rule}. Revise ${item.more} más`;
  }
}

const PER = { night: 'noche', week: 'semana' } as const;

export function otherRuleSentence(item: Of<'other-rule'>, { given, stage, verb }: SpanishWrites): string {
  const figures = item.threshold === null ? 'otra cifra' : `${given(item.threshold)} por ${PER[item.per!]}`;
  const stages = item.stages.length === 0 ? '' : ` en ${item.stages.map(stage).join(', ')}`;
  const cited = citation(item.source);
  return `Otra regla${place(item.region)}: ${figures}${stages}. Según ella: ${verb[item.verb]}.${cited === null ? '' : ` ${cited}.`}`;
}

export const ruleOffSentence = ({ region, reason }: Of<'rule-off'>): string =>
  `Una regla${place(region)} está apagada para este programa: ${reason}. Aquí no habla.`;

export const choiceOpenSentence = (item: Of<'choice-open'>): string =>
  `Valen reglas de varias regiones y este programa no ha dicho cuál rige aquí: habla la más estricta${place(item.region)}. Elija la región en Ajustes, con su asesor.`;
