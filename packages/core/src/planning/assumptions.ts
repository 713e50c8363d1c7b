/** What a plan needs and nobody has published. Each figure is shown with the plan that rests on it. */
import { namedFigures } from '../catalogue/named-figures.ts';
import { COMMON_PRACTICE, OWN_FIGURE } from '../catalogue/sources/sources.ts';
import type { Assumption } from '../catalogue/types.ts';

const figures = {
  hangLeadDays: {
    value: 7,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'A trap that hangs a check before the earliest plausible flight shows zeros first, and so the flight’s true beginning.',
      es: 'Una trampa colgada una revisión antes del vuelo más temprano posible muestra primero ceros, y así el verdadero comienzo del vuelo.',
    },
    ...OWN_FIGURE,
  },
  oneYearMarginDays: {
    value: 14,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'One year shows no spread: springs differ by about two weeks, so the flight may come this much before that year’s.',
      es: 'Un solo año no muestra la variación: las primaveras difieren en unas dos semanas, así que el vuelo puede adelantarse tanto al de ese año.',
    },
    ...OWN_FIGURE,
  },
  seasonDays: {
    value: 120,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'How long traps hang where neither harvest nor an earlier season says when to take them down.',
      es: 'Cuánto tiempo cuelgan las trampas donde ni la cosecha ni una temporada anterior dicen cuándo retirarlas.',
    },
    ...OWN_FIGURE,
  },
  mostTraps: {
    value: 4,
    unit: { en: 'traps per insect and area', es: 'trampas por insecto y zona' },
    why: {
      en: 'More traps than this in one area are seldom kept up; the risk that remains is shown instead.',
      es: 'Más trampas que estas en una zona rara vez se atienden; en su lugar se muestra el riesgo que queda.',
    },
    ...OWN_FIGURE,
  },
  fewestTraps: {
    value: 2,
    unit: { en: 'traps per insect and area', es: 'trampas por insecto y zona' },
    why: {
      en: 'With one trap, a single torn bag or spent lure leaves the area out of sight.',
      es: 'Con una sola trampa, una bolsa rota o un atrayente agotado deja la zona fuera de vista.',
    },
    ...COMMON_PRACTICE,
  },
  precision: {
    value: 0.5,
    unit: { en: 'half-width of the interval as a share of the mean', es: 'semiamplitud del intervalo como parte de la media' },
    why: {
      en: 'Half the mean tells a quiet week from a busy one; sharper figures take more traps than are kept up.',
      es: 'La mitad de la media distingue una semana tranquila de una movida; cifras más finas piden más trampas de las que se atienden.',
    },
    ...OWN_FIGURE,
  },
  precisionLevel: {
    value: 0.8,
    unit: { en: 'probability', es: 'probabilidad' },
    why: { en: 'The level at which rates are shown everywhere.', es: 'El nivel con que se muestran las tasas en todas partes.' },
    ...OWN_FIGURE,
  },
  spareLures: {
    value: 0.1,
    unit: { en: 'share of the lures placed', es: 'parte de los atrayentes colocados' },
    why: {
      en: 'Lures fall, dry out or are placed wrong; one in ten is kept in reserve.',
      es: 'Los atrayentes se caen, se secan o se colocan mal; se guarda uno de cada diez de reserva.',
    },
    ...OWN_FIGURE,
  },
  lostTraps: {
    value: 0.05,
    unit: { en: 'share of the lures placed', es: 'parte de los atrayentes colocados' },
    why: {
      en: 'A trap that is knocked down or stolen takes its lure along.',
      es: 'Una trampa derribada o robada se lleva su atrayente.',
    },
    ...OWN_FIGURE,
  },
  lureLeadDays: {
    value: 21,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'From order to delivery, with some days to notice what is missing.',
      es: 'Del pedido a la entrega, con unos días para notar lo que falta.',
    },
    ...OWN_FIGURE,
  },
  trapLifeSeasons: {
    value: 4,
    unit: { en: 'seasons', es: 'temporadas' },
    why: {
      en: 'How long a trap is used where the user does not say how many are worn out.',
      es: 'Cuánto se usa una trampa cuando nadie dice cuántas están gastadas.',
    },
    ...OWN_FIGURE,
  },
  samePlaceM: {
    value: 20,
    unit: { en: 'm', es: 'm' },
    why: {
      en: 'Traps of one insect this close draw on the same moths: they count as one.',
      es: 'Las trampas de un insecto tan cercanas comparten las mismas polillas: cuentan como una.',
    },
    ...OWN_FIGURE,
  },
  roadFactor: {
    value: 1.3,
    unit: { en: 'road km per great-circle km', es: 'km de camino por km en línea recta' },
    why: { en: 'Farm roads are longer than straight lines.', es: 'Los caminos de finca son más largos que la línea recta.' },
    ...COMMON_PRACTICE,
  },
  drivingKmPerHour: {
    value: 40,
    unit: { en: 'km/h', es: 'km/h' },
    why: {
      en: 'Farm tracks and gates; a map or the user’s own times are better.',
      es: 'Caminos de tierra y portones; es mejor un mapa o los tiempos propios.',
    },
    ...OWN_FIGURE,
  },
  stopMinutes: {
    value: 4,
    unit: { en: 'minutes', es: 'minutos' },
    why: { en: 'Park, walk to the station and back.', es: 'Estacionar, caminar a la estación y volver.' },
    ...OWN_FIGURE,
  },
  trapMinutes: {
    value: 5,
    unit: { en: 'minutes', es: 'minutos' },
    why: { en: 'Empty, count and write down one trap.', es: 'Vaciar, contar y anotar una trampa.' },
    ...OWN_FIGURE,
  },
  usualChecks: {
    value: 2,
    unit: { en: 'days of the week, Monday and Thursday', es: 'días de la semana, lunes y jueves' },
    why: {
      en: 'Where no check days are chosen: often enough to see a flight begin, seldom enough to be kept up.',
      es: 'Donde no se eligen días de revisión: bastante seguido para ver empezar un vuelo, y no tanto que se abandone.',
    },
    ...COMMON_PRACTICE,
  },
  usualLureDays: {
    value: 14,
    unit: { en: 'days', es: 'días' },
    why: {
      en: 'The shorter usual life, where neither a package nor the catalogue says how long a lure lasts.',
      es: 'La duración usual más corta, donde ni un envase ni el catálogo dicen cuánto dura un atrayente.',
    },
    ...COMMON_PRACTICE,
  },
  lateDayMinutes: {
    value: 240,
    unit: { en: 'minutes of driving', es: 'minutos de camino' },
    why: {
      en: 'What a check a day late weighs when rounds are made.',
      es: 'Lo que pesa una revisión un día tarde al armar los recorridos.',
    },
    ...OWN_FIGURE,
  },
  earlyDayMinutes: {
    value: 10,
    unit: { en: 'minutes of driving', es: 'minutos de camino' },
    why: { en: 'What a check a day too soon weighs.', es: 'Lo que pesa una revisión un día antes de tiempo.' },
    ...OWN_FIGURE,
  },
  openingMinutes: {
    value: 30,
    unit: { en: 'minutes of driving', es: 'minutos de camino' },
    why: {
      en: 'What sending one more scout out on a day weighs.',
      es: 'Lo que pesa enviar a un revisor más en un día.',
    },
    ...OWN_FIGURE,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type SeasonAssumptionId = keyof typeof figures;

export const SEASON_ASSUMPTIONS = namedFigures(figures);
