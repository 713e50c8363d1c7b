/** The sheet on which counts are entered at the desk, in Spanish. */
import type { CountsWords } from './counts.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const countsEs: CountsWords = {
  title: 'Anotar conteos',
  loading: 'Leyendo las trampas …',
  sub: (open, all, on) =>
    `Visitas del ${on}: ${open} de ${plural(all, 'trampa', 'trampas')} sin contar todavía. Otro día se elige arriba.`,
  none: 'Ese día no hay ninguna trampa colgada.',
  how: 'Cifras, y luego Tab o Entrar para la trampa que sigue. Una columna copiada de una hoja de cálculo se puede pegar en cualquier casilla, también con los nombres de las trampas delante. Una casilla vacía es «sin contar»; nada capturado es 0.',
  insect: 'Insecto',
  allInsects: 'Todos los insectos',
  onlyDue: 'Solo las trampas que tocan',
  more: 'También otras polillas, condición y nota',
  station: 'Estación',
  trap: 'Trampa',
  last: 'Último conteo',
  lastWas: (count, on) => `${count} el ${on}`,
  never: 'primera visita',
  count: 'Polillas',
  countOf: (trap, insect) => `Polillas en ${trap}, ${insect}`,
  others: 'Otras polillas',
  othersOf: (trap) => `Otras polillas en ${trap}`,
  condition: 'Condición',
  conditionOf: (trap) => `Condición de ${trap}`,
  why: (trap) => `Por qué ${trap} no servía`,
  chooseWhy: '¿por qué?',
  remark: 'Nota',
  remarkOf: (trap) => `Nota sobre ${trap}`,
  counted: 'ya contada',
  odd: {
    high: (last) => `Muy por encima del último conteo, ${last}. ¿Es correcto?`,
    low: (last) => `Muy por debajo del último conteo, ${last}. ¿Es correcto?`,
  },
  needs: { count: 'Un conteo, o «no servía» con su razón.', 'unfit-reason': 'Diga por qué no servía.' },
  nothing: 'Todavía no hay nada anotado.',
  ready: (n) => `${plural(n, 'trampa anotada', 'trampas anotadas')}.`,
  save: (n) => (n === 0 ? 'Guardar' : `Guardar ${plural(n, 'conteo', 'conteos')}`),
  saved: (n, on) => `Guardado: ${plural(n, 'revisión', 'revisiones')} del ${on}.`,
  lacking: (n) => `${n === 1 ? 'A un renglón le' : `A ${n} renglones les`} falta algo; no se guardó nada.`,
  lookAgain: (n) =>
    `${n === 1 ? 'Un conteo está' : `${n} conteos están`} muy por encima de lo esperado. ${n === 1 ? 'Mírelo' : 'Mírelos'} y guarde otra vez.`,
  clear: 'Vaciar la hoja',
  emptied:
    'Se entiende que las polillas contadas aquí se sacaron de la trampa. Los cambios de atrayente, las fotos y las trampas que se dejaron llenas van en la página de la trampa.',
  pasted: (n) => `${plural(n, 'renglón pegado', 'renglones pegados')}.`,
  notPasted: 'No se pegó nada:',
  pasteFaults: {
    'no-count': (line, got) => `renglón ${line}, «${got}»: hace falta un número entero de hasta seis cifras, o nada.`,
    'no-trap': (line, got) => `renglón ${line}, «${got}»: no es una trampa de esta hoja; revise el nombre, el día y los filtros.`,
    twice: (line, got) => `renglón ${line}: ${got} aparece por segunda vez; deje una de las dos.`,
    'too-long': (lines, room) => `${lines} renglones, y desde esta casilla la hoja tiene ${room}; empiece más arriba.`,
  },
  moreFaults: (n) => `y ${n} más como estos.`,
};
