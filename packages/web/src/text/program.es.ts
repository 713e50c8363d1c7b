import type { ProgramWords } from './program.en.ts';

export const programEs: ProgramWords = {
  rules: {
    title: 'Reglas e insectos',
    sub: 'En qué se apoyan los avisos: qué reglas publicadas valen y de dónde viene cada dato.',
  },
  weather: {
    title: 'Datos del tiempo',
    sub: 'De dónde vienen las temperaturas con que se suma el calor, y qué parcelas esperan más.',
    loading: 'Leyendo los datos del tiempo …',
    table: 'Fuentes de datos del tiempo',
    source: 'Fuente',
    from: 'Desde',
    to: 'Último día',
    behind: (days) => (days === 0 ? 'al día' : `${days} ${days === 1 ? 'día' : 'días'} de atraso`),
    missing: 'Días que faltan',
    newestGap: (date) => `el último, ${date}`,
    forecast: 'Pronóstico hasta',
    fields: 'Parcelas',
    none: 'Todavía no hay datos del tiempo. Sin ellos nada se fecha por calor.',
    without: (n) => `Sin fuente (${n})`,
    withoutText: 'Ahí nada se fecha por calor. Escriba una fuente de datos del tiempo en el registro de la parcela.',
  },
  data: {
    title: 'Importar y exportar',
    sub: 'Cómo entran los registros y cómo salen.',
    import: {
      title: 'Importar',
      open: 'Importar una hoja',
      text: 'Una hoja de conteos o de clima tal como usted la lleva, que se ve antes de que se guarde algo. Una carpeta de tablas CSV entra por comando:',
      command: 'npx duskwatch import CARPETA',
    },
    export: {
      title: 'Exportar',
      text: 'Los registros como tablas para una hoja de cálculo:',
      command: 'npx duskwatch export CARPETA',
    },
    backup: {
      title: 'Copia de seguridad',
      text: 'Un archivo guarda cada registro con su historia. Haga uno antes de la temporada y otro después, y guárdelo en otro lugar:',
      command: 'npx duskwatch backup ARCHIVO',
    },
  },
};
