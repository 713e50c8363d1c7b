/** Figures come from the core, so that a cell, a chart and a sentence never round one number in two ways. */
import { figure } from '@duskwatch/core';
import { words } from '../words/index.ts';

const WHOLE = new Intl.NumberFormat(words.locale, { maximumFractionDigits: 0 });

export const rateText = figure;
export const intervalText = (low: number, high: number) => `${figure(low)}–${figure(high)}`;
/** Counts and sums of heat: `1,204`. */
export const countText = (count: number) => WHOLE.format(count);
