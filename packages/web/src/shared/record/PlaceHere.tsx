import { useState } from 'react';
import { recordWords as w } from '../../text/record.ts';

/** Five decimals are about a metre. */
const degrees = (value: number): string => String(Math.round(value * 1e5) / 1e5);

/** Fills in latitude and longitude from where this device says it is. */
export function PlaceHere({ write }: { write: (latitude: string, longitude: string) => void }) {
  const [said, say] = useState('');
  if (!('geolocation' in navigator)) return null;
  const find = () => {
    say(w.placing);
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        write(degrees(coords.latitude), degrees(coords.longitude));
        say('');
      },
      () => say(w.noPlace),
      { enableHighAccuracy: true, timeout: 20_000 },
    );
  };
  return (
    <p className="place-here">
      <button type="button" className="plain-button" onClick={find}>
        {w.placeHere}
      </button>{' '}
      <span role="status">{said}</span>
    </p>
  );
}
