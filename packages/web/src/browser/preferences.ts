import type { LengthUnit, TemperatureUnit } from '@duskwatch/core';
import { useSyncExternalStore } from 'react';
import { remembered } from './remembered.ts';

export type Theme = 'light' | 'dark';

const darkScheme = () => matchMedia('(prefers-color-scheme: dark)');
const theme = remembered<Theme>('duskwatch.theme', ['light', 'dark'], () => (darkScheme().matches ? 'dark' : 'light'));
/** Where people measure in feet and degrees Fahrenheit. A browser that names no country is taken for one of there. */
const inFeet = () => /^en(-US)?$|-US$/.test(globalThis.navigator?.language ?? '');
const temperature = remembered<TemperatureUnit>('duskwatch.temperature', ['F', 'C'], () => (inFeet() ? 'F' : 'C'));
const length = remembered<LengthUnit>('duskwatch.length', ['ft', 'm'], () => (inFeet() ? 'ft' : 'm'));

export function useTheme(): [Theme, (value: Theme) => void] {
  const subscribe = (tell: () => void) => {
    const stop = theme.subscribe(tell);
    const scheme = darkScheme();
    scheme.addEventListener('change', tell);
    return () => {
      stop();
      scheme.removeEventListener('change', tell);
    };
  };
  const choose = (value: Theme) => {
    document.documentElement.dataset.theme = value;
    theme.choose(value);
  };
  return [useSyncExternalStore(subscribe, theme.read), choose];
}

/** The unit that heat and temperatures are shown in, whatever unit a model was published in. */
export function useTemperatureUnit(): [TemperatureUnit, (value: TemperatureUnit) => void] {
  return [useSyncExternalStore(temperature.subscribe, temperature.read), temperature.choose];
}

/** For texts made outside of components: read anew each time they are drawn. */
export const lengthUnit = (): LengthUnit => length.read();

/** The unit that heights and distances are shown in; records keep metres. */
export function useLengthUnit(): [LengthUnit, (value: LengthUnit) => void] {
  return [useSyncExternalStore(length.subscribe, length.read), length.choose];
}
