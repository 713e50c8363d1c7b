/** Numbers as people read them: two figures that matter, never a false third. */
import { degreeDaysFrom, type TemperatureUnit } from '../base/temperature.ts';

/** 0.04 → `0.04`, 0.314 → `0.31`, 3.14 → `3.1`, 31.4 → `31`. */
export function figure(value: number): string {
  if (value === 0) return '0';
  const digits = value >= 10 ? 0 : value >= 1 ? 1 : 2;
  const text = value.toFixed(digits);
  return Number(text) === 0 ? 'under 0.01' : trim(text);
}

/** A rule's own figure, as published: no digit added, none lost. */
export function exact(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** A figure beside the one it is held against: a third digit, so that 11.5 does not read as 12. */
export function fine(value: number): string {
  return String(Number(value.toPrecision(3)));
}

export function percent(share: number): string {
  const value = share * 100;
  if (value > 99 && value < 100) return 'over 99 %';
  if (value > 0 && value < 1) return 'under 1 %';
  return `${Math.round(value)} %`;
}

/** What an event takes of heat, in the reader's unit; and as published where that was in the other. */
export function heatSpan(
  { from, to, unit }: { readonly from: number; readonly to: number | null; readonly unit: TemperatureUnit },
  shown: TemperatureUnit,
  write: (value: number) => string,
): { readonly span: string; readonly published: string | null } {
  const said = (each: (value: number) => number, in_: TemperatureUnit) =>
    `${[from, to].flatMap((end) => (end === null ? [] : [write(each(end))])).join('–')} °${in_}·d`;
  const rounded = (value: number) => Math.round(degreeDaysFrom(value, unit, shown));
  const published = said((value) => value, unit);
  return unit === shown ? { span: published, published: null } : { span: said(rounded, shown), published };
}

const trim = (text: string) => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);
