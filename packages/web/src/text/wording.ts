import { english, spanish, type TemperatureUnit, type Wording } from '@duskwatch/core';
import { useTemperatureUnit } from '../browser/preferences.ts';
import { dayOrder, inLanguage } from './language.ts';

const make = inLanguage({ en: english, es: spanish });
const made: Readonly<Record<TemperatureUnit, Wording>> = {
  C: make({ temperature: 'C', dayOrder }),
  F: make({ temperature: 'F', dayOrder }),
};

export const wordingIn = (temperature: TemperatureUnit): Wording => made[temperature];

/** The core's sentences in the language of the page and the unit that the reader chose. */
export function useWording(): Wording {
  const [temperature] = useTemperatureUnit();
  return wordingIn(temperature);
}
