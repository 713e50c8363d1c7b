import { english, spanish, type TemperatureUnit, type Wording } from '@duskwatch/core';
import { dayOrder, inLanguage } from '../words/language.ts';
import { useTemperatureUnit } from './preferences.ts';

export const wordingIn = (temperature: TemperatureUnit): Wording =>
  inLanguage({ en: english, es: spanish })({ temperature, dayOrder });

/** The core's sentences in the language of the page and the unit that the reader chose. */
export function useWording(): Wording {
  const [temperature] = useTemperatureUnit();
  return wordingIn(temperature);
}
