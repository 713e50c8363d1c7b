import type { PagesWords } from './pages.en.ts';

export const pagesEs: PagesWords = {
  label: 'Páginas',
  week: 'Esta semana',
  traps: 'Trampas',
  flights: 'Vuelos',
  map: 'Mapa',
  scouting: 'Muestreo',
  round: 'Ronda',
  season: 'Temporada',
  rounds: 'Planear rondas',
  conflicts: (n) => `Conflictos ${n}`,
  conflictsLabel: (n) => `Conflictos ${n}: por decidir`,
  learn: 'Aprender',
  questions: (n) => `Preguntas ${n}`,
  questionsLabel: (n) => `Preguntas ${n}: abiertas, sobre los registros`,
  people: 'Personas',
  settings: 'Ajustes',
};
