import type { PhenologyModel } from '../types.ts';
import { agrotisIpsilonModels } from './agrotis-ipsilon.ts';
import { cydiaPomonellaModels } from './cydia-pomonella.ts';
import { helicoverpaZeaModels } from './helicoverpa-zea.ts';
import { melittiaCucurbitaeModels } from './melittia-cucurbitae.ts';
import { ostriniaNubilalisModels } from './ostrinia-nubilalis.ts';

export const models: readonly PhenologyModel[] = [
  ...helicoverpaZeaModels,
  ...ostriniaNubilalisModels,
  ...agrotisIpsilonModels,
  ...melittiaCucurbitaeModels,
  ...cydiaPomonellaModels,
];
