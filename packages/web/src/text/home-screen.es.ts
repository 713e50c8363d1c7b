/** Every string of putting the app on a home screen in Spanish; the browsers' own words from memory. */
import type { HomeScreenWords } from './home-screen.en.ts';

export const homeScreenEs: HomeScreenWords = {
  title: 'En su pantalla de inicio',
  why: 'Desde su propio icono, Duskwatch abre sin las barras del navegador, y sin señal.',
  done: 'Duskwatch está en esta pantalla de inicio.',
  add: 'Poner en la pantalla de inicio',
  others: 'Otros tipos de teléfono',
  kinds: {
    iphone: {
      name: 'iPhone y iPad',
      steps: ['Toque Compartir, el cuadro con una flecha hacia arriba.', 'Baje y toque «Agregar a inicio».', 'Toque «Agregar».'],
    },
    'android-chrome': {
      name: 'Android con Chrome',
      steps: ['Toque ⋮ arriba a la derecha.', 'Toque «Agregar a la pantalla principal».', 'Toque «Instalar».'],
    },
    'android-firefox': {
      name: 'Android con Firefox',
      steps: ['Toque ⋮.', 'Toque «Agregar aplicación a la pantalla de inicio».', 'Toque «Agregar».'],
    },
    'android-samsung': {
      name: 'Android con Samsung Internet',
      steps: ['Toque ☰ abajo a la derecha.', 'Toque «Añadir página a».', 'Toque «Pantalla de inicio».'],
    },
    other: {
      name: 'Otro navegador',
      steps: ['Abra el menú del navegador.', 'Busque «Instalar» o «Agregar a la pantalla de inicio».'],
    },
  },
};
