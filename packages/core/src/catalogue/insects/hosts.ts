import { FROM_MEMORY, noted } from '../sources/sources.ts';

/** Where the lists of crops are from, for every insect alike. */
export const HOSTS_FROM_MEMORY = noted(FROM_MEMORY, {
  en: 'Crops of this catalogue on which it is commonly trapped and scouted for, and others of them that it feeds on; not a list of every host.',
  es: 'Cultivos de este catálogo en los que se suele trampear y muestrear, y otros de ellos de los que se alimenta; no es una lista de todos los hospederos.',
});
