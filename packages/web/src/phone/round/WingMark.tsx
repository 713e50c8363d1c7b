/**
 * The mark of a forewing that tells a moth from its look-alikes, drawn for this page: one outline for all, and on it only
 * what the words beside it say. Front edge above, tip to the right.
 */
import type { ReactNode } from 'react';
import { visitWords as v } from '../../text/visit.ts';

const WING = 'M5 41C20 20 66 9 109 13c5 1 6 6 4 11-3 12-10 23-20 29C67 62 29 60 5 41Z';

const KIDNEY = 'M69 23c5-1 8 3 6 8-2 4-7 5-9 2-2-4 1-9 3-10Z';

const MARKS: Readonly<Record<string, ReactNode>> = {
  'helicoverpa-zea': <circle className="dark" cx="62" cy="29" r="3.6" />,
  'helicoverpa-armigera': <path className="dark" d={KIDNEY} />,
  'heliothis-virescens': (
    <>
      <path className="pale wide" d="M37 24 27 51M63 17 52 58M88 13 77 57" />
      <path className="dark-line wide" d="M40 23 30 52M66 16 55 58M91 13 80 56" />
    </>
  ),
  'ostrinia-nubilalis': (
    <path className="dark-line" d="M47 20c6 4-4 7 2 11s-4 7 2 11-4 8 1 16M84 13c7 5-4 8 2 13s-4 8 2 12-5 8-1 15" />
  ),
  'diatraea-grandiosella': <path className="thin" d="M38 25 104 20M34 34 104 28M36 43 100 37" />,
  'spodoptera-frugiperda': (
    <>
      <path className="pale" d="M97 13c8-1 14 1 15 5 1 3-1 7-3 9-6-1-11-7-12-14Z" />
      <path className="pale wide" d="M52 22 66 38" />
    </>
  ),
  'spodoptera-exigua': (
    <>
      <circle className="pale" cx="54" cy="30" r="4.4" />
      <path className="dark-line" d={KIDNEY} />
    </>
  ),
  'mythimna-unipuncta': (
    <>
      <circle className="pale" cx="64" cy="31" r="2.6" />
      <path className="thin" d="M90 33 111 16" />
    </>
  ),
  'agrotis-ipsilon': (
    <>
      <path className="dark-line" d={KIDNEY} />
      <path className="dark" d="M77 27 94 30 77 32Z" />
      <path className="thin" d="M96 13c2 13-1 28-8 41" />
    </>
  ),
  'agrotis-segetum': (
    <>
      <circle className="dark-line" cx="51" cy="28" r="4.4" />
      <path className="dark-line" d={KIDNEY} />
      <path className="dark-line" d="M36 39h14c3 0 3 5 0 5H36Z" />
    </>
  ),
  'peridroma-saucia': <path className="dark" d="M6 40C22 20 68 9 108 13c-36 4-74 12-102 27Z" />,
  'striacosta-albicosta': (
    <>
      <path className="pale" d="M6 40C22 20 68 9 108 13c-38 3-76 12-102 27Z" />
      <circle className="pale" cx="50" cy="33" r="4" />
      <path className="pale" d="M69 26c6 1 6 10 0 12 3-4 3-8 0-12Z" />
    </>
  ),
  'trichoplusia-ni': (
    <>
      <path className="pale wide" d="M50 29c1 9 10 9 10 0" />
      <circle className="pale" cx="68" cy="38" r="2.8" />
    </>
  ),
  'plutella-xylostella': <path className="pale" d="M8 42c8-6 14 4 22 1s12-4 20 2 14-3 22 0 12 3 20 8C67 62 29 60 8 42Z" />,
  'acrolepiopsis-assectella': <path className="pale" d="M46 59 52 46l8 13Z" />,
};

export const hasWingMark = (insect: string): boolean => insect in MARKS;

export const WingMark = ({ insect }: { insect: string }) => (
  <figure className="wing-mark">
    <svg viewBox="0 0 120 68" aria-hidden="true">
      <path className="wing" d={WING} />
      {MARKS[insect]}
    </svg>
    <figcaption className="hint">{v.drawing}</figcaption>
  </figure>
);
