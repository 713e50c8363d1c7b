import type { ProgramWords } from './program.en.ts';

export const programEs: ProgramWords = {
  rules: {
    title: 'Reglas e insectos',
    sub: 'En qué se apoyan los avisos: qué reglas publicadas valen y de dónde viene cada dato.',
  },
  data: {
    title: 'Importar y exportar',
    sub: 'Cómo entran los registros y cómo salen.',
    import: {
      title: 'Importar',
      open: 'Importar una hoja',
      text: 'Una hoja de conteos o de clima tal como usted la lleva, que se ve antes de que se guarde algo.',
    },
    export: {
      title: 'Exportar',
      text: 'Cada registro que usted puede leer, con lo que contiene cada columna: como carpeta comprimida de tablas CSV, que Duskwatch y otros programas vuelven a leer, o como libro de hojas.',
      folder: 'Carpeta de tablas (zip)',
      workbook: 'Libro de hojas (XLSX)',
    },
    backup: {
      title: 'Copia de seguridad',
      text: 'Un archivo guarda cada registro con su historia, las personas y las fotos, revisado antes de copiarse y después. Haga uno antes de la temporada y otro después, y guárdelo fuera de esta máquina.',
      caution:
        'Contiene nombres, lugares y las huellas de las contraseñas: guárdelo donde solo lo lea quien puede leer el programa.',
      make: 'Hacer una copia (zip)',
    },
    restore: {
      title: 'Recuperar una copia',
      text: 'En la máquina del servidor, en una carpeta de datos propia, a partir del zip descomprimido:',
      command: 'npx duskwatch restore CARPETA --data CARPETA_NUEVA',
    },
    making: (megabytes) => `${megabytes} MB hasta ahora …`,
    cancel: 'Cancelar',
    saved: (name) => `Guardado: ${name}`,
    unreachable: 'El servidor no responde. No se guardó nada.',
    failed: 'No se pudo:',
  },
};
