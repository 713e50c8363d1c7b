import type { CheckRecord, LocalName } from '@duskwatch/core';
import { lengthUnit } from '../../browser/preferences.ts';
import { distanceText, lengthText } from '../../format/length.ts';
import { words } from '../../text/index.ts';
import { roundWords as w } from '../../text/round.ts';

export const local = (name: LocalName) => (words.locale.startsWith('es') ? name.es : name.en);
/** The first of several names: on a phone there is room for one. */
export const shortName = (name: LocalName) => local(name).split(' / ', 1)[0]!;
export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

const decimal = (digits: number) => new Intl.NumberFormat(words.locale, { maximumFractionDigits: digits });

/** `12 km`, `7.5 mi`. */
export const wayText = (km: number) => distanceText(km, lengthUnit());
/** `1.2 m`, `3.9 ft`. */
export const heightText = (m: number) => lengthText(m, lengthUnit());
export const whole = (value: number) => decimal(0).format(value);

/** `12 + 3 others`, `unfit`. */
export function countText(check: Pick<CheckRecord, 'targetCount' | 'otherCount' | 'condition'>): string {
  if (check.targetCount === null) return check.condition === 'unfit' ? w.trap.unfitKept : w.trap.notCounted;
  const others = check.otherCount === null ? '' : ` + ${whole(check.otherCount)} ${w.trap.others.toLowerCase()}`;
  return `${whole(check.targetCount)}${others}`;
}
