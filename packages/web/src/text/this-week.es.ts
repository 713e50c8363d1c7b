/** The headline of This week, its due lists, its folded fields and the answers given on it, in Spanish. */
import type { ThisWeekWords } from './this-week.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const thisWeekEs: ThisWeekWords = {
  headline: {
    late: (n) => plural(n, 'decisión está atrasada', 'decisiones están atrasadas'),
    moreAfterLate: (n, by) => `${plural(n, 'más está pendiente', 'más están pendientes')} a más tardar el ${by}`,
    due: (n, by) => `${plural(n, 'decisión está pendiente', 'decisiones están pendientes')} a más tardar el ${by}`,
    noDecision: 'No hay ninguna decisión pendiente donde Duskwatch puede ver',
    scouting: (n) => `${plural(n, 'parcela', 'parcelas')} por muestrear`,
    blind: (n) => `${plural(n, 'lugar', 'lugares')} donde no puede ver`,
    fields: (fields, farms) => `${plural(fields, 'parcela', 'parcelas')} en ${plural(farms, 'finca', 'fincas')}`,
    quiet: (n) => (n === 1 ? 'la que no pide nada está plegada' : `las ${n} que no piden nada están plegadas`),
  },
  unanswered: (days, since) => `${plural(days, 'día', 'días')} de retraso, sin respuesta desde el ${since}`,
  dueSince: (days, since) => `${plural(days, 'día', 'días')} de retraso, desde el ${since}`,
  by: (date) => `a más tardar el ${date}`,
  byToday: 'hoy a más tardar',
  answer: 'Responder',
  answerTo: (field, insect) => `Responder: ${field}, ${insect}`,
  answers: {
    title: 'Qué se decidió',
    treated: 'Se trató',
    'not-treated': 'Se decidió no tratar, porque …',
    sampled: 'Se miró y se contó',
    'not-scouted': 'Se decidió no mirar, porque …',
  },
  answerNote:
    'La respuesta queda con el nombre y el día. La pregunta vuelve cuando pasa su plazo y la captura la sigue haciendo.',
  trapsAt: (traps, stations) => `${plural(traps, 'trampa', 'trampas')} en ${plural(stations, 'estación', 'estaciones')}`,
  checkWhy: {
    'check-due': 'hoy',
    'check-overdue': (days) => `${plural(days, 'día', 'días')} de retraso`,
    unfit: 'no estaba apta',
    'lure-due': 'se acaba ahora',
    'lure-overdue': (days) => `vencido hace ${plural(days, 'día', 'días')}`,
  },
  startRound: 'Salir a la ronda',
  quietWatch: (check) => `Vigilar, próxima revisión ${check}`,
  quietWatchOnly: 'Vigilar',
  quietNone: 'fuera de temporada',
  fold: 'Plegar lo que no pide nada',
  key: (level) =>
    `Línea: polillas por trampa y noche en esta temporada, con su intervalo del ${level}. La línea a trazos es la regla de esa parcela y ese diseño de trampa, siempre a la misma altura, para comparar a simple vista lo que está encima y debajo: por debajo la altura crece con la raíz cuadrada de la captura; por encima cada diez veces más es un paso. Un hueco son noches sin trampa apta, nunca ceros. Un punto fino: el insecto no vive en este cultivo. Una raya da la razón por la que ahora no cuenta.`,
};
