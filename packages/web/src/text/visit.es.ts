/** Ante la trampa, en español. */
import type { VisitWords } from './visit.en.ts';

export const visitEs: VisitWords = {
  countFor: (date) => `Conteo del ${date}`,
  here: (n, of) => `${n} de ${of} aquí`,
  nights: (insect, n) => (n === 0 ? `${insect}, hoy` : `${insect}, ${n} ${n === 1 ? 'noche' : 'noches'}`),
  last: (count, on) => `antes ${count}, ${on}`,
  lastUnfit: (on) => `no apta, ${on}`,
  leftIn: (count) => `quedaron ${count}`,
  never: 'primer conteo',
  which: '¿Qué polilla?',

  lure: {
    due: 'Toca atrayente',
    age: (days, life) => (life === null ? `${days} días` : `${days} de ${life} días`),
    changed: 'Cambiado',
    notToday: 'Hoy no',
    fresh: (life) => (life === null ? 'Nuevo, duración no sabida' : `Nuevo, ${life} días`),
    gloves: 'Guantes nuevos; llévese el atrayente viejo.',
    needed: 'Atrayente: ¿cambiado u hoy no?',
  },

  unfit: {
    gap: (nights) => `${nights} no dicen nada. Quedan como hueco, nunca como cero.`,
    nights: (n) => (n === 1 ? 'La noche desde la última visita' : `Las ${n} noches desde la última visita`),
    today: 'Las noches desde la última visita',
    afresh: 'Déjela bien ahora si puede: esta noche empieza a contar de nuevo.',
    count: 'Contar lo que hay dentro',
  },

  odd: {
    question: (last, now) => `La vez pasada ${last}. ¿De veras ${now}?`,
    most: (most) => `Lo más que ha tenido esta trampa es ${most}.`,
    around: (list) => `Otras trampas para ella, hace poco: ${list}.`,
    odd: 'Raro no es falso. Una foto ayuda a quien lo lea después.',
    oddLow:
      'Puede que haya terminado. Mire también el atrayente y la entrada: una trampa que ya no captura se nota aquí, o en semanas.',
    yes: (now) => `Sí, ${now}`,
    no: 'No, corregirlo',
    photo: 'Sí, y tomar una foto',
  },

  skipped: (reason) => `Se saltó: ${reason}.`,
  unskip: 'Quitar el salto',
  unskipped: (trap) => `${trap}: salto quitado`,
  marks: 'Cómo reconocerla',
  drawing: 'Ala delantera derecha, dibujada según esta descripción: solo la marca.',
  fromMemory: 'Descrita de memoria, sin fuente a la mano.',
};
