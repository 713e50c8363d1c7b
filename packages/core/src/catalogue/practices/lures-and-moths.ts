import type { Practice } from '../types.ts';
import { caution, practice } from './kinds.ts';

export const lureAndMothPractices: readonly Practice[] = [
  {
    ...practice,
    id: 'lure-position',
    act: 'handling-lures',
    text: { en: 'The lure is clipped at the opening of the trap.', es: 'El atrayente se sujeta en la entrada de la trampa.' },
  },
  {
    ...practice,
    id: 'gloves-between-species',
    act: 'handling-lures',
    text: {
      en: 'Fresh disposable gloves for each species: a trace of another scent brings in another moth.',
      es: 'Guantes desechables nuevos para cada especie: un rastro de otro olor atrae a otra polilla.',
    },
  },
  {
    ...practice,
    id: 'lure-life',
    act: 'handling-lures',
    figure: { low: 14, high: 28, unit: 'days' },
    text: {
      en: 'Many lures are spent after two to four weeks; the package says how long its own lasts.',
      es: 'Muchos atrayentes se agotan en dos a cuatro semanas; el empaque dice cuánto dura el suyo.',
    },
  },
  {
    ...practice,
    id: 'lure-storage',
    act: 'handling-lures',
    text: {
      en: 'Unopened lures are kept cold or frozen, as their package says.',
      es: 'Los atrayentes sin abrir se guardan en frío o congelados, según su empaque.',
    },
  },
  {
    ...practice,
    id: 'check-interval',
    act: 'checking',
    figure: { low: 3.5, high: 7, unit: 'days' },
    text: {
      en: 'Every trap is checked once or twice a week, and every check is written down, all season.',
      es: 'Cada trampa se revisa una o dos veces por semana y cada revisión se anota, toda la temporada.',
    },
  },
  {
    ...practice,
    id: 'count-others-apart',
    act: 'checking',
    text: {
      en: 'The target and all other moths are counted apart, and both numbers are written down.',
      es: 'La especie buscada y las demás polillas se cuentan por separado y se anotan ambas.',
    },
  },
  {
    ...practice,
    id: 'freeze-live-moths',
    act: 'handling-moths',
    figure: { low: 2, high: 2, unit: 'h' },
    text: {
      en: 'Live moths spend two hours in a freezer before they are counted.',
      es: 'Las polillas vivas pasan dos horas en el congelador antes de contarlas.',
    },
  },
  {
    ...caution,
    id: 'exhaust-is-poison',
    act: 'handling-moths',
    text: {
      en: 'Some use engine exhaust instead of a freezer: it is carbon monoxide and kills people. Outdoors only, never in a closed space; a freezer is the better way.',
      es: 'Hay quien usa gases de escape en lugar del congelador: es monóxido de carbono y mata. Solo al aire libre, nunca en un lugar cerrado; es mejor el congelador.',
    },
  },
];
