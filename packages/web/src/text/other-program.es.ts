/** Todos los textos del camino entre el programa propio y la demostración, en español. */
import type { OtherProgramWords } from './other-program.en.ts';

export const otherProgramEs: OtherProgramWords = {
  go: { own: 'Empezar mi propio programa', demo: 'Probar la demostración' },
  to: { own: 'Mi propio programa', demo: 'La demostración inventada' },
  text: {
    own: 'Un programa inventado para conocerlo: nada de lo que se anota aquí llega a un programa suyo.',
    demo: 'Una cooperativa inventada con dos temporadas completas y otra detenida a mediados de julio. Está en una base de datos aparte y nunca se mezcla con sus registros.',
  },
  opening: { own: 'Abriendo su programa …', demo: 'Abriendo la demostración; la primera vez tarda unos segundos …' },
  failed: 'No se pudo abrir. La terminal donde corre Duskwatch dice por qué.',
};
