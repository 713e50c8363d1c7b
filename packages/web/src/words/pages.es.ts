import type { PagesWords } from './pages.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const pagesEs: PagesWords = {
  label: 'Páginas',
  week: 'Esta semana',
  traps: 'Trampas',
  map: 'Mapa',
  round: 'Ronda',
  conflicts: (n) => `Conflictos ${n}`,
  conflictsLabel: (n) => plural(n, 'conflicto por decidir', 'conflictos por decidir'),
  people: 'Personas',
  settings: 'Ajustes',
};
