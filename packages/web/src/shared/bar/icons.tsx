/** Drawn for the bar, 24 px with a line of 1.7: each is of one stroke as with a pencil in a field book. */
import type { BarPlaceId } from './places.ts';

const DRAWN: Readonly<Record<BarPlaceId, string>> = {
  // A way past three stops.
  round:
    'M4 19.2a1.9 1.9 0 1 0 3.8 0a1.9 1.9 0 1 0-3.8 0M16.2 4.8a1.9 1.9 0 1 0 3.8 0a1.9 1.9 0 1 0-3.8 0M7.8 19.2h8.4a3.6 3.6 0 0 0 0-7.2H7.8a3.6 3.6 0 0 1 0-7.2h8.4',
  // A leaf with a bite at its edge.
  scout:
    'M5 20C4.500 11 10 4.500 19.5 4.500c.4 3.200 0 5.800-1 8a3 3 0 0 0-3.600 3.600C12.900 17.700 10 18.300 7 17.6M5 20c1.700-5 4.500-8.300 8.500-10.500',
  // Rows that run to the horizon.
  fields: 'M3 7.500h18M3.500 20 9 7.500M9.300 20l1.600-12.500M14.700 20 13.100 7.500M20.5 20 15 7.500',
  ownFields: 'M3 12.500 12 5l9 7.500M5.500 10.500V20M18.500 10.500V20M9.200 20l1.400-6M14.800 20l-1.400-6',
  // A pencil.
  record: 'M4.500 19.500l1-4.500L16 4.500l3.500 3.500L9 18.500zM13.500 7l3.500 3.500',
  map: 'M12 20.500c4.300-5 6.300-8.300 6.300-11.200a6.300 6.300 0 0 0-12.600 0C5.700 12.200 7.700 15.500 12 20.500zM9.800 9.400a2.200 2.200 0 1 0 4.400 0a2.200 2.200 0 1 0-4.400 0',
  // Seven nights and what they caught.
  week: 'M4 19.500v-3M6.700 19.500v-5M9.300 19.500v-8M12 19.500V5M14.700 19.500V8.500M17.300 19.500V12M20 19.500v-4',
  questions: 'M4 5h16v11.500h-8.500L7 20.500v-4H4zM10 9c.2-1.900 4-1.900 4 .2 0 1.500-2 1.500-2 2.800M12 14v.1',
  more: 'M4 7h16M4 12h16M4 17h10',
};

export const BarIcon = ({ place }: { place: BarPlaceId }) => (
  <svg viewBox="0 0 24 24" aria-hidden="true">
    <path d={DRAWN[place]} />
  </svg>
);
