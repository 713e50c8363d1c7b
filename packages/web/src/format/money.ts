import { locale } from '../text/language.ts';

const made = new Map<string, Intl.NumberFormat>();

/** `$1,204` or `$7.40`: cents only where the sum is small. A code that no browser knows is written out. */
export function moneyText(sum: number, currency: string): string {
  const digits = Math.abs(sum) < 100 ? 2 : 0;
  const key = `${currency} ${digits}`;
  let format = made.get(key);
  if (!format) {
    format = new Intl.NumberFormat(locale, {
      style: 'currency',
      currency,
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
    });
    made.set(key, format);
  }
  return format.format(sum);
}
