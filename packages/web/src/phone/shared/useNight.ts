import { useEffect, useState } from 'react';
import { type Theme, useTheme } from '../../browser/preferences.ts';
import { isNight } from './dusk.ts';

const LOOK_AGAIN_MS = 5 * 60_000;

/** The theme of the round: the one chosen by hand; else the night's after dusk at the place; else the phone's own. */
export function useNight(place: { readonly latitude: number | null; readonly longitude: number | null } | undefined) {
  const [preferred, choose] = useTheme();
  const [chosen, setChosen] = useState(chosenByHand);
  const night = useDarkOutside(place?.latitude ?? null, place?.longitude ?? null);
  const theme: Theme = chosen ?? (night ? 'dark' : preferred);
  useEffect(() => {
    if (chosen || !night) return;
    document.documentElement.dataset.theme = 'dark';
    return () => void delete document.documentElement.dataset.theme;
  }, [chosen, night]);
  const chooseByHand = (value: Theme) => {
    setChosen(value);
    choose(value);
  };
  return [theme, chooseByHand] as const;
}

/** As the page's first script reads it, before any paint. */
function chosenByHand(): Theme | null {
  const theme = document.documentElement.dataset.theme;
  return theme === 'light' || theme === 'dark' ? theme : null;
}

function useDarkOutside(latitude: number | null, longitude: number | null): boolean {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const timer = setInterval(() => setNow(new Date()), LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, []);
  return latitude !== null && longitude !== null && isNight(now, latitude, longitude);
}
