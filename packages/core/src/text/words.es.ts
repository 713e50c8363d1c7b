/** Spanish names and forms that many sentences use. */
import { catalogue, cropById, insectById, regionName } from '../catalogue/index.ts';
import { spanishDay as date } from './days.ts';
import { exact, figure, fine, percent } from './figures.ts';
import type { SpanishSays } from './larvae.es.ts';
import type { SpanishWrites } from './reasons.es.ts';
import type { Wording } from './types.ts';

export const verb: Wording['verb'] = {
  watch: 'Vigilar',
  scout: 'Muestrear',
  decide: 'Decidir',
  covered: 'Cubierto',
  blind: 'A ciegas',
  none: 'Fuera de temporada',
};

/** A treatment whose product is not known is one all the same. */
export const productName = (product: string): string => (product.trim() === '' ? 'un producto que nadie anotó' : product);

export const design: Wording['design'] = {
  bucket: 'trampa de cubeta',
  'mesh-cone': 'cono de malla',
  'wire-cone': 'cono de alambre',
  delta: 'trampa delta',
  other: 'otro diseño',
};

export const standing: Wording['standing'] = {
  published: 'publicado',
  practice: 'práctica común, sin fuente',
  memory: 'recordado, fuente no a mano',
  own: 'propio de este programa',
  chosen: 'cifra elegida por Duskwatch, sin fuente',
};

export const event: Wording['event'] = {
  'set-out-traps': 'momento de colocar las trampas',
  'first-moth': 'primera polilla',
  'first-eggs': 'primeros huevos',
  'egg-hatch': 'eclosión de huevos',
  'peak-flight': 'máximo del vuelo',
  'treatment-period': 'larvas dañinas',
  'adult-emergence': 'emergencia de polillas',
  'small-larvae': 'larvas pequeñas',
  'large-larvae': 'larvas grandes',
  'first-cutting': 'primeras plantas cortadas',
  cutting: 'corte de plantas',
  'cutting-slows': 'el corte disminuye',
  'cutting-stops': 'el corte termina',
  pupation: 'pupación',
  'next-adults': 'próximas polillas',
  'hatch-20-percent': '20 % de los huevos eclosionados',
  'flight-25-percent': 'un cuarto del vuelo',
  'peak-egg-laying': 'máximo de puesta',
};

/** A written figure with its words in Spanish; the decimal point is that of Mexico. */
export const spoken = (text: string) => text.replace('under ', 'menos de ').replace('over ', 'más de ');
export const number = (value: number) => spoken(figure(value));
export const given = (value: number) => spoken(exact(value));
export const share = (value: number) => spoken(percent(value));
export const says: SpanishSays = { date, given, share };
export const plural = (count: number, one: string, many = `${one}s`) => `${number(count)} ${count === 1 ? one : many}`;
export const insectName = (id: string) => insectById(id)?.commonName.es ?? id;
/** Con su artículo, dentro de una frase; un insecto que el catálogo no conoce va como está escrito. */
export const theInsect = (id: string) => {
  const name = insectById(id)?.commonName.es;
  if (name === undefined) return id;
  return `${/^(polilla|palomilla|oruga|mariposa)/.test(name) ? 'la' : 'el'} ${name}`;
};
export const cropName = (id: string) => cropById(id)?.name.es ?? id.replaceAll('-', ' ');
export const regionSpanish = (region: string) => regionName(region).es;
export const readable = (word: string) => word.replaceAll('-', ' ');
export const capital = (text: string) => `${text[0]!.toUpperCase()}${text.slice(1)}`;
const stageNames = new Map(catalogue.crops.flatMap(({ stages }) => stages.map(({ id, name }) => [id, name.es] as const)));
export const stageName = (word: string): string => stageNames.get(word) ?? readable(word);
export const PER = { night: 'noche', week: 'semana' } as const;
const UNIT: Readonly<Record<string, string>> = {
  plants: 'plantas',
  ears: 'mazorcas',
  fruit: 'frutos',
  'egg-masses': 'masas de huevos',
};
export const SIGN: Readonly<Record<string, string>> = {
  infested: 'infestación',
  eggs: 'huevos',
  damaged: 'daño',
  'egg-masses': 'masas de huevos',
};
export const unitName = (word: string) => UNIT[word] ?? readable(word);
export const writes: SpanishWrites = {
  date,
  number,
  given,
  fine: (value) => spoken(fine(value)),
  share,
  unit: unitName,
  stage: stageName,
  verb,
};
