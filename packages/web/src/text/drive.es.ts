/** Antes de salir y por el camino, en español. */
import type { DriveWords } from './drive.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const driveEs: DriveWords = {
  take: {
    title: 'Lleve consigo',
    lures: (list) => `Atrayentes: ${list}`,
    lure: (n, insect) => `${n} de ${insect}`,
    gloves: (n) => plural(n, 'par de guantes', 'pares de guantes'),
    glovesHelp: 'un par nuevo para cada atrayente',
    stops: (list, n) => `${n === 1 ? 'para la parada' : 'para las paradas'} ${list}`,
    repair: 'Poste, amarres y una trampa de repuesto',
    repairHelp: (list, n) => `${n === 1 ? 'parada' : 'paradas'} ${list}, no apta`,
    cold: 'Una hielera para polillas vivas',
  },

  due: {
    today: 'revisión pendiente hoy',
    late: (days) => `revisión con ${plural(days, 'día', 'días')} de atraso`,
    never: 'primera revisión',
    notDue: (date) => `no toca hasta el ${date}`,
    lureLast: 'atrayente en su último día',
    lurePast: (days) => `atrayente vencido hace ${plural(days, 'día', 'días')}`,
    lureSoon: (days) => `el atrayente vence en ${plural(days, 'día', 'días')}`,
    unfit: (reason) => `estaba ${reason}: repárela`,
    unfitUnsaid: 'no estaba apta: repárela',
    silent: (nights, count, others) =>
      `${count} en ${plural(nights, 'noche', 'noches')}, las otras unas ${others}: mire atrayente, entrada y lugar`,
    loud: (nights, count, others) =>
      `${count} en ${plural(nights, 'noche', 'noches')}, las otras unas ${others}: mire si todas son de la plaga`,
  },

  way: {
    winds: ['al norte', 'al noreste', 'al este', 'al sureste', 'al sur', 'al suroeste', 'al oeste', 'al noroeste'],
    from: (distance, wind, from) => `${distance} ${wind} de ${from}`,
    fromYou: (distance, wind) => `${distance} ${wind} de usted`,
    here: 'Desde aquí',
    finding: 'Buscando dónde está usted …',
    failed: 'Este teléfono no dice dónde está.',
    map: 'Mapa',
    mapLabel: (station) => `Mapa de este teléfono con ${station}`,
    caution: 'Nunca mire mientras maneja.',
    noPlace: 'No consta el lugar de esta estación.',
  },

  clock: {
    ahead: (days) => `El reloj de este teléfono va ${plural(days, 'día', 'días')} adelantado.`,
    behind: (days) => `El reloj de este teléfono va ${plural(days, 'día', 'días')} atrasado.`,
    written: (date) => `Lo que guarde se anota para el ${date}.`,
    redate: (date) => `Anotarlo para el ${date}`,
  },

  signal: {
    none: 'Sin señal',
    signedOut: 'Sesión cerrada',
    signedOutText: 'Su sesión está cerrada: no se lee ni se envía nada. Lo que guarde queda aquí hasta que entre.',
  },

  typed: {
    row: (count) => `${count} escrito, sin guardar`,
    something: 'empezada, sin guardar',
    title: (n) => `${plural(n, 'visita escrita', 'visitas escritas')} sin guardar`,
    of: (what, date) => `${what}, ${date}`,
    save: (n) => (n === 1 ? 'Guardarla y terminar' : `Guardar las ${n} y terminar`),
    cannot: 'A algunas les falta algo: ábralas, o termine sin ellas.',
    without: 'Terminar sin ellas',
    withoutHelp: 'Quedan escritas en este teléfono y vuelven a sus casillas si la trampa se abre el mismo día.',
    open: 'Abrir',
  },
};
