/** Every string of what a device keeps for where there is no signal, in Spanish. */
import type { OfflineWords } from './offline.en.ts';

export const offlineEs: OfflineWords = {
  since: (when) => `Sin señal. Así se leyó aquí el ${when}.`,
  holds: 'Este aparato guarda',
  read: (when) => `leído el ${when}`,
  holdsNothing: 'Todavía no hay nada guardado en este aparato: abra Duskwatch una vez con señal, y sus páginas se quedan.',
  pages: {
    week: 'Esta semana',
    ownFields: 'Mis parcelas',
    traps: 'Parcelas y trampas',
    questions: 'Preguntas',
    round: 'La ronda',
    scout: 'Muestreo',
    fields: (n) => `${n} ${n === 1 ? 'página de parcela' : 'páginas de parcelas'}`,
  },
};
