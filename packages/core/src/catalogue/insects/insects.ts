/** The insects of the catalogue, in the order in which they are shown. One folder each; this is where it is made known. */
import type { InsectEntry } from '../types.ts';
import { agrotisIpsilon } from './agrotis-ipsilon/insect.ts';
import { cydiaPomonella } from './cydia-pomonella/insect.ts';
import { helicoverpaZea } from './helicoverpa-zea/insect.ts';
import { melittiaCucurbitae } from './melittia-cucurbitae/insect.ts';
import { ostriniaNubilalis } from './ostrinia-nubilalis/insect.ts';
import { pierisRapae } from './pieris-rapae/insect.ts';
import { plutellaXylostella } from './plutella-xylostella/insect.ts';
import { spodopteraFrugiperda } from './spodoptera-frugiperda/insect.ts';
import { striacostaAlbicosta } from './striacosta-albicosta/insect.ts';

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
];
