/** Español: lo que las polillas capturadas han dejado en un campo. */
import type { Evidence, LarvaeDates } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';
import type { TemperatureUnit } from '../base/temperature.ts';
import { citation } from '../catalogue/index.ts';
import { heatSpan } from './figures.ts';

type Larvae = Evidence & { readonly kind: 'larvae' };

/** How days and numbers are written, given by the rest of the language. */
export interface SpanishSays {
  readonly date: (day: IsoDay) => string;
  readonly given: (value: number) => string;
  readonly share: (value: number) => string;
}

const STAGE = {
  egg: 'huevos',
  'small-larva': 'larvas pequeñas',
  'large-larva': 'larvas grandes',
  larva: 'larvas',
} as const;
const plural = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

export function larvaeReason({ lookFor, worthGoing, on }: Larvae, { date }: SpanishSays): string {
  if (lookFor === 'nothing-yet') return 'las polillas capturadas apenas empiezan a poner';
  if (worthGoing === null || worthGoing.method === 'reached')
    return `ahora sobre todo ${STAGE[lookFor]}, según las polillas capturadas`;
  return `se esperan larvas pequeñas de las polillas capturadas a partir del ${date(on)}`;
}

export function larvaeSentence(
  item: Larvae,
  design: string,
  standing: string,
  says: SpanishSays,
  shown: TemperatureUnit,
): string {
  const { date, given } = says;
  const caught = `${plural(item.moths, 'polilla')} ${item.moths === 1 ? 'capturada' : 'capturadas'} del ${date(item.from)} al ${date(item.to)} (${design}, ${plural(item.traps, 'trampa')}${
    item.unknownNights === 0 ? '' : `; ${plural(item.unknownNights, 'noche')} sin datos`
  })`;
  const { egg, beforeLaying, unit } = item.heat;
  const sum = (from: number) => {
    const { span, published } = heatSpan({ from, to: null, unit }, shown, given);
    return published === null ? span : `${span} (publicado como ${published})`;
  };
  const laying = beforeLaying === 0 ? '' : `ponen dentro de ${sum(beforeLaying)}, `;
  const heat = `${laying}eclosión ${sum(egg)} después de la puesta; ${citation(item.source) ?? standing}`;
  return [
    `${caught}: ${mixture(item, says)}.`,
    ...going(item.worthGoing, says),
    ...hatching(item, says),
    ...where(item),
    `Según el calor: ${heat}.`,
  ].join(' ');
}

function mixture({ shares, on, lookFor }: Larvae, { date, share }: SpanishSays): string {
  if (shares === null || lookFor === 'nothing-yet') return `el ${date(on)} todavía no hay huevos que contar`;
  const parts = (Object.keys(STAGE) as (keyof typeof STAGE)[])
    .filter((stage) => shares[stage] >= 0.005)
    .map((stage) => `${share(shares[stage])} ${STAGE[stage]}`);
  return `su descendencia en la parcela el ${date(on)} es ${parts.join(', ')}`;
}

function going(dates: LarvaeDates | null, { date }: SpanishSays): string[] {
  if (dates === null) return [];
  const { early, middle, late, lateOpen, method, years } = dates;
  if (method === 'reached') return ['Conviene ir ya: las larvas pequeñas son la décima parte o más.'];
  if (method === 'own-forecast') return [`Conviene ir a partir del ${date(middle)}, según su propio pronóstico del tiempo.`];
  const how =
    method === 'past-years'
      ? `según ${plural(years, 'año anterior', 'años anteriores')} de esta fuente`
      : method === 'normals'
        ? 'según las normales mensuales de esta fuente, que tiene muy pocos años propios'
        : 'si los próximos días son como los últimos 14';
  return [
    `Conviene ir a partir del ${date(middle)} (entre el ${date(early)} y el ${date(late)}${lateOpen ? ' o después' : ''}, ${how}).`,
  ];
}

function hatching({ hatch: { ten, half } }: Larvae, { date }: SpanishSays): string[] {
  if (ten === null) return [];
  return [
    `La décima parte de los huevos habrá eclosionado el ${date(ten)}${half === null ? '' : `, la mitad el ${date(half)}`}.`,
  ];
}

function where({ places }: Larvae): string[] {
  if (places.length === 0) return [];
  const said = places.map(({ stage, where, source }) => `${STAGE[stage]} ${where.es} (${citation(source) ?? 'de memoria'})`);
  return [`Dónde buscar: ${said.join('; ')}.`];
}
