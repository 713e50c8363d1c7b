import { homeScreenEn } from './home-screen.en.ts';
import { homeScreenEs } from './home-screen.es.ts';
import { inLanguage } from './language.ts';

/** The words of putting the app on a home screen in the language in use. */
export const homeScreenWords = inLanguage({ en: homeScreenEn, es: homeScreenEs });
