import { english, type Wording } from '@duskwatch/core';
import { useMemo } from 'react';
import { useTemperatureUnit } from './preferences.ts';

/** The core's sentences in the language of the page and the unit that the reader chose. */
export function useWording(): Wording {
  const [temperature] = useTemperatureUnit();
  return useMemo(() => english({ temperature }), [temperature]);
}
