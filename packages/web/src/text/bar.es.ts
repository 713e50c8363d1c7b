/** Every string of the bar on a phone in Spanish. */
import type { BarWords } from './bar.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const barEs: BarWords = {
  label: 'Páginas',
  places: {
    round: 'Ronda',
    scout: 'Muestrear',
    fields: 'Parcelas',
    ownFields: 'Mis parcelas',
    record: 'Anotar',
    map: 'Mapa',
    week: 'Semana',
    questions: 'Preguntas',
    more: 'Más',
  },
  unsent: (n) => `${plural(n, 'registro', 'registros')} sin enviar`,
  open: (n) => plural(n, 'pregunta abierta', 'preguntas abiertas'),
};
