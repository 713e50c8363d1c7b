/** Every string of the questions about records in Spanish. */
import type { QuestionsWords } from './questions.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const questionsEs: QuestionsWords = {
  title: 'Preguntas',
  sub: (open, compared, visits) =>
    `${open === 0 ? 'Nada abierto' : plural(open, 'pregunta', 'preguntas')} · ${compared} de las ${visits} revisiones útiles de la temporada se pudieron comparar con otras trampas`,
  loading: 'Comparando entre sí los conteos de la temporada …',
  lead: 'Raro no es equivocado. Quien estuvo ante la trampa lo sabe; nada se cambia por sí solo.',
  none: {
    title: 'Nada que preguntar',
    text: 'Los registros de la temporada se ven bien. Con pocas trampas de una clase hay poco con qué comparar, y solo se ven los errores grandes.',
  },
  kinds: {
    'unlikely-count': 'Un conteo poco probable',
    'columns-swapped': '¿Objetivo y otras cambiados?',
    'repeated-count': 'El mismo conteo una y otra vez',
    'same-count-everywhere': 'Un mismo conteo en todas',
    'entered-in-bulk': 'Anotadas de una vez',
    'rounded-counts': 'Muchos números redondos',
    'silent-trap': 'Una trampa que calla mientras otras capturan',
    'loud-trap': 'Una trampa que captura muchas veces más que otras',
    'swapped-traps': '¿Dos trampas cambiadas?',
  },
  evidence: 'Evidencia',
  columns: {
    trap: 'Trampa',
    day: 'Día',
    count: 'Contadas',
    others: 'Otras',
    expected: 'Esperadas',
    neighbours: 'Otras trampas de su tipo, mismas noches',
    act: 'Corregir',
  },
  neighbour: (trap, count, nights) => `${trap}: ${count} en ${plural(nights, 'noche', 'noches')}`,
  noNeighbours: 'ninguna con que comparar',
  unknown: '–',
  right: 'Está bien',
  correct: 'Corregir',
  correctLabel: (trap, day) => `Corregir: la revisión de ${trap}, ${day}`,
  later: 'Preguntar después',
  said: { right: 'La respuesta queda guardada.', later: 'Se preguntará de nuevo en una semana.' },
  takeBack: 'Preguntar otra vez',
  takenBack: 'La pregunta está abierta otra vez.',
  settled: (n) => `${plural(n, 'pregunta respondida o aplazada', 'preguntas respondidas o aplazadas')}`,
  answered: {
    right: (who, day) => `${who}, ${day}: está bien`,
    later: (who, day) => `${who}, ${day}: después`,
    declined: (who, day) => `${who}, ${day}: rechazada`,
  },
  somebody: 'Alguien',
  open: (n) => plural(n, 'pregunta abierta sobre los registros', 'preguntas abiertas sobre los registros'),
};
