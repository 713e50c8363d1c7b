import { FROM_MEMORY, noted } from '../sources/sources.ts';

/** Where the lists of crops are from, for every insect alike. */
export const HOSTS_FROM_MEMORY = noted(FROM_MEMORY, {
  en: 'The crops of this catalogue on which it is commonly trapped and scouted for; not a list of every host.',
  es: 'Los cultivos de este catálogo en los que se suele trampear y muestrear; no es una lista de todos los hospederos.',
});
