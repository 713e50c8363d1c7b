import { fromKilometres, fromMetres, type LengthUnit } from '@duskwatch/core';
import { locale } from '../text/language.ts';

const decimals = (digits: number) => new Intl.NumberFormat(locale, { maximumFractionDigits: digits });
const WHOLE = decimals(0);
const TENTHS = decimals(1);

const rounded = (value: number) => (value < 10 ? TENTHS : WHOLE).format(value);

/** A height or a short way: `1.2 m`, `3.9 ft`. */
export const lengthText = (metres: number, unit: LengthUnit): string => `${rounded(fromMetres(metres, unit))} ${unit}`;

/** A way to drive: `12 km`, `7.5 mi`. */
export const distanceText = (kilometres: number, unit: LengthUnit): string =>
  `${rounded(fromKilometres(kilometres, unit))} ${unit === 'm' ? 'km' : 'mi'}`;
