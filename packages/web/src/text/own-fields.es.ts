/** Every string of a grower's own fields in Spanish. */
import type { OwnFieldsWords } from './own-fields.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const ownFieldsEs: OwnFieldsWords = {
  title: 'Mis parcelas',
  countsTo: (day) => (day === null ? 'ninguna trampa revisada todavía' : `trampas contadas hasta el ${day}`),
  reading: 'Leyendo sus parcelas …',
  of: (insect) => `: ${insect}`,
  also: 'También',
  waits: (n) => `${plural(n, 'registro suyo espera', 'registros suyos esperan')} aquí la señal`,
  rest: 'Las demás',
  nothing: 'Nada pendiente en sus parcelas',
  fields: (n) => plural(n, 'parcela', 'parcelas'),
  next: (day) => `próxima revisión de trampas: ${day}`,
  none: {
    title: 'Todavía no hay ninguna parcela suya',
    text: 'La coordinación del programa anota ranchos y parcelas. Cuando estén las suyas, esta página dice qué pide cada una.',
  },
};
