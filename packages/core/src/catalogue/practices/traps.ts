import { JACKSON_2005, UNH_TRAP_SHEET } from '../sources/sources.ts';
import type { Practice } from '../types.ts';
import { ANY, caution, practice } from './kinds.ts';

export const trapPractices: readonly Practice[] = [
  {
    ...practice,
    id: 'hang-before-flight',
    act: 'planning',
    text: {
      en: 'Traps hang before the flight is expected: one hung late has no biofix.',
      es: 'Las trampas se cuelgan antes del vuelo esperado: una colgada tarde no tiene biofix.',
    },
  },
  {
    ...practice,
    id: 'buy-lures-early',
    act: 'planning',
    text: {
      en: 'Lures for the whole season are bought before the flight begins.',
      es: 'Los atrayentes para toda la temporada se compran antes de que empiece el vuelo.',
    },
  },
  {
    ...practice,
    id: 'wire-cones-do-well',
    act: 'planning',
    insects: ['helicoverpa-zea', 'melittia-cucurbitae'],
    designs: ['wire-cone'],
    text: {
      en: 'Wire cones have served well for tomato fruitworm and squash vine borer.',
      es: 'Los conos de alambre han dado buen resultado con el gusano del tomate y el barrenador de la calabaza.',
    },
  },
  {
    ...JACKSON_2005,
    ...ANY,
    weight: 'fact',
    id: 'small-wire-cones-vine-borer',
    act: 'planning',
    insects: ['melittia-cucurbitae'],
    designs: ['wire-cone'],
    text: {
      en: 'Of nine designs compared, small wire cones caught the most squash vine borers.',
      es: 'De nueve diseños comparados, los conos pequeños de alambre capturaron más barrenadores de la calabaza.',
    },
  },
  {
    ...UNH_TRAP_SHEET,
    ...ANY,
    weight: 'fact',
    id: 'low-growth-under-trap',
    act: 'siting',
    note: { en: 'The source says about a foot.', es: 'La fuente dice más o menos un pie.' },
    figure: { low: 0.3, high: 0.3, unit: 'm' },
    text: {
      en: 'Growth under the trap stays below about 0.3 m (1 ft): taller, it costs catch.',
      es: 'La vegetación bajo la trampa se mantiene por debajo de unos 0.3 m: más alta, reduce la captura.',
    },
  },
  {
    ...UNH_TRAP_SHEET,
    ...ANY,
    weight: 'fact',
    id: 'in-crop-or-upwind',
    act: 'siting',
    text: {
      en: 'A trap stands inside the crop or on its upwind edge, and away from woods.',
      es: 'La trampa va dentro del cultivo o en su borde contra el viento, lejos del bosque.',
    },
  },
  {
    ...practice,
    id: 'clear-of-machines',
    act: 'siting',
    text: {
      en: 'Close to the field, easy to walk to, clear of tractors and implements, with flagging tape that drivers can see.',
      es: 'Cerca de la parcela, de fácil acceso, fuera del paso de tractores y aperos, con cinta visible para quien maneja.',
    },
  },
  {
    ...caution,
    id: 'post-eyes',
    act: 'setting-posts',
    text: { en: 'Wear eye protection when driving a post.', es: 'Use protección para los ojos al clavar un poste.' },
  },
  {
    ...caution,
    id: 'post-buried-lines',
    act: 'setting-posts',
    text: {
      en: 'Have buried lines located before a hole is dug or a post driven.',
      es: 'Pida que se ubiquen las líneas enterradas antes de cavar o clavar un poste.',
    },
  },
];
