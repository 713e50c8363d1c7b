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
      title: 'Traer una copia de vuelta',
      text: 'Primero se mira el zip que dio una copia: nada cambia antes de que usted confirme. El programa de ahora queda después a un lado en el servidor, y no se pierde.',
      choose: 'Elegir una copia (zip)',
      sending: (share) => `${share} enviado …`,
      looking: 'Revisando cada byte …',
      holds: (name, records, photos) => `Contiene ${name}: ${records} entradas en su historia, ${photos} fotos.`,
      newest: (when) => `Lo último dicho en ella: ${when}.`,
      people: (n) =>
        n === 0
          ? 'Nadie tiene cuenta en ella.'
          : `${n} ${n === 1 ? 'persona tiene' : 'personas tienen'} cuenta en ella: entre como allí.`,
      missing: (n) => `${n} ${n === 1 ? 'foto que nombra no está' : 'fotos que nombra no están'} en ella.`,
      caution:
        'Desde entonces todos ven el programa de la copia. Lo escrito después está en el programa que queda a un lado; los teléfonos ofrecen de nuevo lo que todavía guardan.',
      confirm: 'Ponerla en el lugar de este programa',
      drop: 'Dejarla',
      beginning: 'El servidor empieza de nuevo …',
      done: (aside) => `Traída de vuelta. El programa anterior está en ${aside} en el servidor.`,
      reload: 'Abrirlo',
    },
    making: (megabytes) => `${megabytes} MB hasta ahora …`,
    cancel: 'Cancelar',
    saved: (name) => `Guardado: ${name}`,
    unreachable: 'El servidor no responde. No se guardó nada.',
    failed: 'No se pudo:',
  },
};
