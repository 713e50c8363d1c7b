/** Every string of the page that leads to all else on a phone in Spanish. */
import type { MoreWords } from './more.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const moreEs: MoreWords = {
  title: 'Más',
  pages: 'Otras páginas',
  scout: 'Recorrido de muestreo',
  unsent: {
    title: 'Sin enviar',
    none: 'Todo lo que anotó en este teléfono ha llegado.',
    waits: (n) => `${plural(n, 'registro espera', 'registros esperan')} en este teléfono; se enviará todo solo.`,
    refused: (n) => `${plural(n, 'registro fue rechazado', 'registros fueron rechazados')}: vea por qué, y corrija o descarte.`,
    seeRefused: 'Ver lo rechazado',
    send: 'Enviar ahora',
    sending: 'Enviando …',
    trouble: {
      unreachable: 'Sin señal.',
      'signed-out': 'Su sesión terminó: inicie sesión y se enviará.',
      'other-person': 'Aquí inició sesión otra persona: esperan a quien los escribió.',
    },
  },
};
