/** Figures come from the core, so that a cell, a chart and a sentence never round one number in two ways. */

import { locale } from '../text/language.ts';
import { wordingIn } from '../text/wording.ts';

const WHOLE = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
// Figures hold no temperature: any unit says them alike.
const { figure, percent } = wordingIn('C');

export const rateText = figure;
export const percentText = percent;
export const intervalText = (low: number, high: number) => `${figure(low)}–${figure(high)}`;
/** Counts and sums of heat: `1,204`. */
export const countText = (count: number) => WHOLE.format(count);
