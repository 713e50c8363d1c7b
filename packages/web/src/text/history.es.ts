/** Every string of histories and conflicts in Spanish. */
import type { HistoryWords } from './history.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const historyEs: HistoryWords = {
  button: 'Historia',
  of: (what) => `Historia de ${what}`,
  now: 'Como está ahora',
  removedNow: 'Este registro se quitó. Recuperar una versión anterior lo trae de vuelta.',
  said: (n) => `Dicho hasta ahora, ${plural(n, 'versión', 'versiones')}`,
  by: (who, when) => `${who}, ${when}`,
  countedAt: (when) => `cuenta como de ${when}: el reloj con que se escribió no iba bien`,
  first: 'Escrito primero:',
  firstAlone: 'Escrito primero, y como está ahora.',
  removed: 'Quitado',
  unchanged: 'Dicho otra vez, sin diferencia',
  standing: {
    current: 'vale ahora',
    removed: 'última palabra: quitado',
    rival: 'espera una decisión',
    past: 'anterior',
  },
  notSent: 'en esta máquina, aún sin enviar',
  change: { caption: 'Lo que cambió', property: 'Qué', before: 'Antes', after: 'Después' },
  restore: 'Recuperar esto',
  restoreOf: (who, when) => `Recuperar esto: lo que dijo ${who}, ${when}`,
  edit: 'Editar',
  remove: 'Quitar',
  none: 'Nunca se dijo nada de esto.',
  loading: 'Leyendo la historia …',
  failed: 'La historia no se pudo leer.',
  again: 'Intentar de nuevo',

  conflicts: {
    title: 'Conflictos',
    nav: (n) => (n === 0 ? 'Conflictos' : `Conflictos ${n}`),
    navLabel: (n) => (n === 0 ? 'Conflictos: ninguno' : `Conflictos: ${n} por decidir`),
    lead: 'Dos personas dijeron cosas distintas sin saber una de otra. Ambas se guardan. Hasta que alguien decida, vale la más reciente.',
    none: 'Sin conflictos',
    noneText:
      'Nada de lo dicho se contradice. Cuando dos personas editan un registro sin saber una de otra, las dos versiones esperan aquí una decisión.',
    loading: 'Leyendo los conflictos …',
    reason: {
      'same-record': 'Dos ediciones de un registro',
      'same-key': 'Dos registros de una misma cosa',
    },
    holds: 'Vale ahora',
    other: 'También dicho',
    keep: 'Quedarse con esto',
    keepOf: (who, when) => `Quedarse con esto: lo que dijo ${who}, ${when}`,
    removed: 'Dice que el registro se quitó.',
    same: 'igual en ambos',
    differs: 'distinto',
    kept: (who) => `Vale lo que dijo ${who}. Lo otro queda en la historia.`,
    keepOther: 'Quedarse mejor con lo otro',
    failed: (why) => `Sin decidir: ${why}`,
    all: 'Historia completa',
  },
  refused: {
    title: 'No aceptado por el servidor',
    lead: 'Escrito en esta máquina y no aceptado. Escríbalo bien o abandónelo.',
    retry: 'Enviar otra vez',
    discard: 'Abandonarlo',
    discarded: 'Abandonado.',
  },
};
