/** Todos los textos de los primeros pasos de un programa, en español. */
import type { FirstWords } from './first.en.ts';

export const firstEs: FirstWords = {
  title: 'Su primer consejo',
  lead: 'Cinco registros cortos, y esta página dice qué hacer en una parcela y por qué. Todo se puede cambiar después.',
  done: 'hecho',
  next: 'sigue',
  steps: {
    fields: {
      title: 'Una parcela',
      why: 'De ella hablan los consejos: su finca, su nombre, su cultivo.',
      act: 'Añadir una parcela',
    },
    stages: {
      title: 'La etapa de su cultivo',
      why: 'La mayoría de las reglas vale solo en algunas etapas: jilote, primera flor, cabeza.',
      act: 'Anotar la etapa',
    },
    traps: {
      title: 'Una trampa',
      why: 'Para un insecto, con el día en que se colgó y las parcelas por las que habla.',
      act: 'Añadir una trampa',
    },
    lures: {
      title: 'Su atrayente',
      why: 'El día en que se puso y cuánto dura: uno viejo atrae menos, y la tasa parecería más baja de lo que es.',
      act: 'Anotar el atrayente',
    },
    checks: {
      title: 'La primera revisión',
      why: 'La cuenta desde que se colgó la trampa. Una trampa vacía es un 0, y así se anota.',
      act: 'Anotar la revisión',
    },
  },
  more: 'O traiga lo que ya tiene',
  ways: {
    sheet: 'Sus propias hojas',
    sheetText:
      'Conteos o clima como usted los lleva, con cualquier acomodo: ve lo que se entendió antes de que se guarde nada, y puede deshacerlo entero.',
    sheetAct: 'Importar una hoja',
  },
  quiet: {
    title: 'Ninguna parcela está cerca de su temporada en este día',
    text: 'El programa tiene parcelas, pero sus cultivos se cosecharon hace más de 60 días o se siembran dentro de más de 60. Elija otro día, o mire las trampas.',
  },
};
