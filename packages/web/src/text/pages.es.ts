import type { PagesWords } from './pages.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const pagesEs: PagesWords = {
  label: 'Páginas',
  places: { week: 'Esta semana', fields: 'Parcelas y trampas', rounds: 'Rondas', flights: 'Vuelos', season: 'Temporada' },
  within: (place) => `Dentro de ${place}`,
  pages: {
    week: 'Esta semana',
    bulletin: 'Boletín',
    sheet: 'En papel',
    list: 'Lista',
    map: 'Mapa',
    questions: 'Preguntas',
    conflicts: 'Conflictos',
    rounds: 'Rondas',
    counts: 'Anotar conteos',
    scouting: 'Muestreo',
    round: 'Ronda de hoy',
    flights: 'Vuelos',
    plan: 'Plan de temporada',
    review: 'Balance',
  },
  toAnswer: (n) => plural(n, 'pregunta o conflicto por responder', 'preguntas y conflictos por responder'),
  howToRead: 'Cómo leer esta página',
  program: 'Programa',
  programPages: {
    people: 'Personas',
    rules: 'Reglas e insectos',
    weather: 'Datos del tiempo',
    data: 'Importar y exportar',
    settings: 'Ajustes',
    help: 'Ayuda',
  },
};
