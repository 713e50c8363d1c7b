import type { FindWords } from './find.en.ts';

const plural = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

export const findEs: FindWords = {
  open: 'Buscar',
  hint: 'Parcela, trampa, finca, insecto, página',
  title: 'Buscar una parcela, trampa, finca, insecto, persona, página o nota',
  label: 'Qué buscar',
  kinds: {
    page: 'Páginas',
    field: 'Parcelas',
    farm: 'Fincas',
    trap: 'Trampas',
    insect: 'Insectos',
    person: 'Personas',
    record: 'Lo que se escribió',
  },
  fields: (n) => plural(n, 'parcela', 'parcelas'),
  takenDown: (date) => `retirada ${date}`,
  records: { checks: 'revisión', skips: 'parada omitida', treatments: 'tratamiento', decisions: 'respuesta a una decisión' },
  none: 'Nada de ese nombre que usted pueda ver.',
  start: 'Escriba parte de un nombre, en cualquier orden; los acentos y las mayúsculas no importan.',
  found: (n) => plural(n, 'resultado', 'resultados'),
  more: (n) => `y ${n} más: siga escribiendo para acotar`,
  offline: 'El servidor no responde: por ahora solo se encuentran páginas.',
};
