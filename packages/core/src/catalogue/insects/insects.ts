/** The insects of the catalogue, in the order in which they are shown. One folder each; this is where it is made known. */
import type { InsectEntry } from '../types.ts';
import { acrolepiopsisAssectella } from './acrolepiopsis-assectella/insect.ts';
import { agrotisIpsilon } from './agrotis-ipsilon/insect.ts';
import { agrotisSegetum } from './agrotis-segetum/insect.ts';
import { cydiaNigricana } from './cydia-nigricana/insect.ts';
import { cydiaPomonella } from './cydia-pomonella/insect.ts';
import { diatraeaGrandiosella } from './diatraea-grandiosella/insect.ts';
import { helicoverpaArmigera } from './helicoverpa-armigera/insect.ts';
import { helicoverpaZea } from './helicoverpa-zea/insect.ts';
import { heliothisVirescens } from './heliothis-virescens/insect.ts';
import { keiferiaLycopersicella } from './keiferia-lycopersicella/insect.ts';
import { melittiaCucurbitae } from './melittia-cucurbitae/insect.ts';
import { mythimnaUnipuncta } from './mythimna-unipuncta/insect.ts';
import { ostriniaNubilalis } from './ostrinia-nubilalis/insect.ts';
import { peridromaSaucia } from './peridroma-saucia/insect.ts';
import { phthorimaeaOperculella } from './phthorimaea-operculella/insect.ts';
import { pierisRapae } from './pieris-rapae/insect.ts';
import { plutellaXylostella } from './plutella-xylostella/insect.ts';
import { spodopteraExigua } from './spodoptera-exigua/insect.ts';
import { spodopteraFrugiperda } from './spodoptera-frugiperda/insect.ts';
import { striacostaAlbicosta } from './striacosta-albicosta/insect.ts';
import { trichoplusiaNi } from './trichoplusia-ni/insect.ts';
import { tutaAbsoluta } from './tuta-absoluta/insect.ts';

export const insectEntries: readonly InsectEntry[] = [
  helicoverpaZea,
  ostriniaNubilalis,
  spodopteraFrugiperda,
  agrotisIpsilon,
  melittiaCucurbitae,
  cydiaPomonella,
  striacostaAlbicosta,
  plutellaXylostella,
  pierisRapae,
  trichoplusiaNi,
  helicoverpaArmigera,
  heliothisVirescens,
  spodopteraExigua,
  mythimnaUnipuncta,
  peridromaSaucia,
  agrotisSegetum,
  diatraeaGrandiosella,
  tutaAbsoluta,
  keiferiaLycopersicella,
  phthorimaeaOperculella,
  acrolepiopsisAssectella,
  cydiaNigricana,
];
