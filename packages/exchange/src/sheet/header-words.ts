/** Words that head the columns of sheets, in English and Spanish. */

import { plainName, type SheetRole } from '@duskwatch/core';
import { elementOf } from '../weather/weather-headings.ts';

type HeaderRole = Exclude<SheetRole, 'month' | 'year'> | 'count';

const WORDS: Readonly<Record<HeaderRole, readonly string[]>> = {
  trap: [
    'trap',
    'trap id',
    'trap no',
    'trap number',
    'trap name',
    'trap code',
    'trap label',
    'trap #',
    'trampa',
    'no de trampa',
    'numero de trampa',
    'id trampa',
    'id',
  ],
  station: [
    'station',
    'site',
    'site name',
    'site id',
    'location',
    'locations',
    'place',
    'trap location',
    'trap site',
    'town',
    'county',
    'estacion',
    'sitio',
    'lugar',
    'ubicacion',
    'localidad',
    'municipio',
  ],
  day: [
    'date',
    'day',
    'checked',
    'checked on',
    'check date',
    'date checked',
    'visit',
    'visit date',
    'date of check',
    'date of visit',
    'collection date',
    'date collected',
    'sample date',
    'week ending',
    'week end',
    'week of',
    'week',
    'week beginning',
    'we',
    'reading date',
    'date read',
    'fecha',
    'dia',
    'fecha de revision',
    'fecha revision',
    'fecha de lectura',
    'semana',
    'semana del',
    'revisada',
  ],
  count: [
    'count',
    'counts',
    'moths',
    'catch',
    'moth count',
    'target count',
    'no of moths',
    'number of moths',
    'moths caught',
    'number',
    'no',
    'num',
    'males',
    'total moths',
    'total catch',
    'adults',
    'captures',
    'caught',
    'trap count',
    'trap catch',
    'qty',
    'value',
    'how many moths',
    'moth total',
    'polillas',
    'captura',
    'capturas',
    'conteo',
    'cuenta',
    'cantidad',
    'machos',
    'numero',
    'numero de polillas',
    'palomillas',
    'adultos',
  ],
  otherCount: [
    'other',
    'others',
    'other count',
    'other moths',
    'other species',
    'non target',
    'nontarget',
    'bycatch',
    'by catch',
    'otras',
    'otros',
    'otras polillas',
    'otras especies',
  ],
  condition: ['condition', 'trap condition', 'condicion', 'condicion de la trampa', 'estado de la trampa'],
  note: [
    'note',
    'notes',
    'comment',
    'comments',
    'remark',
    'remarks',
    'observation',
    'observations',
    'anything to add',
    'nota',
    'notas',
    'comentario',
    'comentarios',
    'observacion',
    'observaciones',
  ],
  insect: [
    'insect',
    'species',
    'pest',
    'moth',
    'moth species',
    'target',
    'target pest',
    'insect pest',
    'insecto',
    'plaga',
    'especie',
    'lure',
    'lure type',
    'feromona',
  ],
  design: ['design', 'trap design', 'trap type', 'type', 'type of trap', 'tipo', 'tipo de trampa', 'diseno'],
  field: ['field', 'field id', 'field name', 'block', 'plot', 'campo', 'parcela', 'lote', 'potrero'],
  farm: [
    'farm',
    'grower',
    'producer',
    'farm name',
    'grower name',
    'cooperator',
    'client',
    'finca',
    'rancho',
    'productor',
    'granja',
    'predio',
  ],
  crop: ['crop', 'crop type', 'planting', 'cultivo'],
  hungOn: [
    'hung',
    'hung on',
    'date hung',
    'set out',
    'date set',
    'deployed',
    'date deployed',
    'set',
    'installed',
    'colgada',
    'instalada',
    'fecha de instalacion',
  ],
};

const roles = new Map(Object.entries(WORDS).flatMap(([role, words]) => words.map((word) => [word, role as HeaderRole] as const)));
const QUESTION_WORDS = /^(what|which|when|where|how|who|cual|que|cuando|donde|cuantas?|cuantos?)\b/;

/** What a heading says that its column holds; null where it says nothing known. */
export function roleOf(heading: string): HeaderRole | null {
  const plain = plainName(heading);
  const known = roles.get(plain) ?? roles.get(plain.replace(/ (en|de la|of the) .*$/, ''));
  if (known !== undefined) return known;
  // A form asks in sentences: "How many moths were in the trap?"
  if (!heading.includes('?') && !QUESTION_WORDS.test(plain)) return null;
  if (/^(how many|cuant)/.test(plain)) return 'count';
  if (/\b(date|when|fecha|cuando)\b/.test(plain)) return 'day';
  if (/\b(condition|condicion)\b/.test(plain)) return 'condition';
  if (/\b(insect|species|pest|plaga|especie)\b/.test(plain)) return 'insect';
  if (/\b(trap|trampa)\b/.test(plain)) return 'trap';
  return /\b(site|where|location|donde|sitio)\b/.test(plain) ? 'station' : null;
}

/** A time of day or of sending: no day of a check where a column says that better. */
export const isTimeStamp = (heading: string): boolean =>
  /\b(time ?stamp|submitted|submission|created|modified|entered|start time|completion time|time|hora|marca temporal|marca de tiempo|enviado)\b/i.test(
    heading,
  );

/** Totals and means are worked out from counts; they are no trap and no day. */
export const isSummary = (label: string): boolean =>
  /^(?:(?:grand|season|sub|weekly|farm|year|running|cum\w*|gran)[\s-]*)?(totals?|subtotals?|sums?|means?|averages?|avg|ave|max(imum)?|min(imum)?|median|st\.?\s?dev\.?|promedios?|sumas?|media|suma total|acumulado|cumulative|Σ)\b\.?/iu.test(
    label.trim(),
  );

/** A heading of weather, which is never a count wherever it stands. */
export const isWeather = (heading: string): boolean => elementOf(heading) !== undefined;

/** Where something stands, as forms and stations write it: no count, and no name of a trap. */
export const isCoordinate = (heading: string): boolean =>
  /^(gps\s*)?(lat(itude|itud)?|lon(g|gitude|gitud)?|lng|easting|northing|elev(ation|aci[oó]n)?|altitude|altitud)\b[\s.]*(\(?(deg\w*|dd|wgs ?84|°|m|ft|msnm)\)?)?$/i.test(
    heading.trim(),
  );
