/** Todos los textos de los primeros pasos de un programa, en español. */
import type { FirstWords } from './first.en.ts';

export const firstEs: FirstWords = {
  title: 'Su primer consejo',
  lead: 'Una parcela, una trampa y una revisión bastan para un primer consejo; lo demás lo hace más seguro. Esta lista queda hasta que haya consejo, y todo se puede cambiar después.',
  done: 'hecho',
  next: 'sigue',
  of: (done, all) => `${done} de ${all}`,
  steps: {
    fields: {
      title: 'Parcelas',
      why: 'De ellas hablan los consejos: la finca, el nombre, el cultivo. Una por una, o muchas desde una hoja.',
      without: 'Sin parcela no hay de qué aconsejar.',
      act: 'Añadir una parcela',
    },
    places: {
      title: 'Dónde están',
      why: 'Una parcela con lugar está en el mapa, y se ve si su tiempo viene de cerca.',
      without: 'Sin lugares: ni mapa, ni ronda por distancia, y un tiempo lejano se toma sin preguntar.',
      act: 'Abrir el mapa',
    },
    stages: {
      title: 'La etapa de cada cultivo',
      why: 'La mayoría de las reglas vale solo en algunas etapas: jilote, primera flor, cabeza.',
      without: 'Sin etapa: a ciegas donde una regla la pide.',
      act: 'Anotar la etapa',
    },
    traps: {
      title: 'Una trampa para cada parcela',
      why: 'Para un insecto, con el día en que se colgó y las parcelas por las que habla.',
      without: 'Sin trampa no hay captura que comparar con una regla.',
      act: 'Añadir una trampa',
    },
    weather: {
      title: 'Datos del tiempo',
      why: 'La mínima y la máxima de cada día: traídas de un servicio abierto, leídas de un archivo o anotadas a mano.',
      without: 'Sin ellos: ninguna fecha para la eclosión de huevos, las larvas o el próximo vuelo.',
      act: 'Preparar los datos del tiempo',
    },
    lures: {
      title: 'Sus atrayentes',
      why: 'El día en que se puso cada uno y cuánto dura: uno viejo atrae menos, y la tasa parecería más baja de lo que es.',
      without: 'Sin ellos: nadie se entera de cuándo toca cambiar uno, y una captura baja puede ser del atrayente.',
      act: 'Anotar el atrayente',
    },
    checks: {
      title: 'La primera revisión de cada trampa',
      why: 'La cuenta desde que se colgó la trampa. Una trampa vacía es un 0, y así se anota.',
      without: 'Sin revisión: a ciegas, pues una trampa que nadie miró no dice nada.',
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
