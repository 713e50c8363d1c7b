import type { CalendarKind, Language } from '@duskwatch/core';

/** What an entry is about, in words. */
interface CalendarSubject {
  /** Station, field or farm. */
  readonly place: string;
  readonly insects: string;
  readonly traps: string;
  readonly quantity: number | null;
}

export interface CalendarWords {
  readonly name: (program: string, invented: boolean) => string;
  readonly summary: Readonly<Record<CalendarKind, (subject: CalendarSubject) => string>>;
  readonly overdue: (summary: string) => string;
  readonly insects: (insects: string) => string;
  readonly traps: (traps: string) => string;
  readonly fields: (fields: string) => string;
  readonly farm: (farm: string) => string;
  readonly caution: Readonly<Partial<Record<CalendarKind, string>>>;
  readonly everywhere: string;
}

const count = (n: number | null, one: string, many: string) => (n === null ? many : `${n} ${n === 1 ? one : many}`);

const en: CalendarWords = {
  name: (program, invented) => `Traps: ${program}${invented ? ' (invented)' : ''}`,
  summary: {
    hang: ({ place, insects, quantity }) => `Hang ${count(quantity, 'trap', 'traps')}: ${insects}, ${place}`,
    check: ({ place }) => `Check traps: ${place}`,
    'change-lure': ({ place, insects, traps, quantity }) =>
      `Change ${count(quantity, 'lure', 'lures')}: ${insects}, ${traps || place}`,
    'take-down': ({ place, insects, quantity }) => `Take down ${count(quantity, 'trap', 'traps')}: ${insects}, ${place}`,
    'order-lures': ({ insects, quantity }) => `Order ${count(quantity, 'lure', 'lures')}: ${insects}`,
    scout: ({ place, insects }) => `Scout ${place}: ${insects}`,
    decide: ({ place, insects }) => `Decision due: ${insects}, ${place}`,
  },
  overdue: (summary) => `${summary} (overdue)`,
  insects: (insects) => `Insects: ${insects}`,
  traps: (traps) => `Traps: ${traps}`,
  fields: (fields) => `Fields: ${fields}`,
  farm: (farm) => `Farm: ${farm}`,
  caution: {
    hang: 'Before driving a post: have buried lines located, protect eyes and hands. Mind traffic and heat.',
    check: 'Keep off a treated field until its re-entry time is over. Mind traffic and heat.',
    'change-lure': 'Fresh gloves for each species. Keep off a treated field until its re-entry time is over.',
    'order-lures': 'Keep unopened lures cold, as their package says.',
    scout: 'Keep off a treated field until its re-entry time is over.',
    decide: 'With a licensed adviser. The product label and local law come first.',
  },
  everywhere: 'all farms',
};

const es: CalendarWords = {
  name: (program, invented) => `Trampas: ${program}${invented ? ' (inventado)' : ''}`,
  summary: {
    hang: ({ place, insects, quantity }) => `Colgar ${count(quantity, 'trampa', 'trampas')}: ${insects}, ${place}`,
    check: ({ place }) => `Revisar trampas: ${place}`,
    'change-lure': ({ place, insects, traps, quantity }) =>
      `Cambiar ${count(quantity, 'atrayente', 'atrayentes')}: ${insects}, ${traps || place}`,
    'take-down': ({ place, insects, quantity }) => `Quitar ${count(quantity, 'trampa', 'trampas')}: ${insects}, ${place}`,
    'order-lures': ({ insects, quantity }) => `Pedir ${count(quantity, 'atrayente', 'atrayentes')}: ${insects}`,
    scout: ({ place, insects }) => `Muestrear ${place}: ${insects}`,
    decide: ({ place, insects }) => `Decisión pendiente: ${insects}, ${place}`,
  },
  overdue: (summary) => `${summary} (atrasado)`,
  insects: (insects) => `Insectos: ${insects}`,
  traps: (traps) => `Trampas: ${traps}`,
  fields: (fields) => `Parcelas: ${fields}`,
  farm: (farm) => `Finca: ${farm}`,
  caution: {
    hang: 'Antes de clavar un poste: haga ubicar las líneas enterradas y proteja ojos y manos. Cuidado con el tráfico y el calor.',
    check: 'No entre en una parcela tratada hasta que pase su plazo de reentrada. Cuidado con el tráfico y el calor.',
    'change-lure': 'Guantes nuevos para cada especie. No entre en una parcela tratada hasta que pase su plazo de reentrada.',
    'order-lures': 'Guarde en frío los atrayentes sin abrir, según su empaque.',
    scout: 'No entre en una parcela tratada hasta que pase su plazo de reentrada.',
    decide: 'Con un asesor con licencia. La etiqueta del producto y la ley local van primero.',
  },
  everywhere: 'todas las fincas',
};

export const calendarWords: Readonly<Record<Language, CalendarWords>> = { en, es };
