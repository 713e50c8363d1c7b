import { words } from '../../text/index.ts';

const figure = new Intl.NumberFormat(words.locale, { maximumSignificantDigits: 3 });

/** `2.5`, `0.31`, `148`. */
export const fineNumber = (value: number): string => (value < 1e-4 ? '0' : figure.format(value));
