/** Which trap hangs where, and which fields it informs. */
import type { TrapDesign } from '@duskwatch/core';

export const INSECTS = {
  HZ: 'helicoverpa-zea',
  ON: 'ostrinia-nubilalis',
  SF: 'spodoptera-frugiperda',
  MC: 'melittia-cucurbitae',
} as const;
export type InsectCode = keyof typeof INSECTS;

export interface DemoTrap {
  readonly station: string;
  readonly insect: InsectCode;
  readonly design: TrapDesign;
  readonly informs: readonly string[];
}

const hang = (station: string, insect: InsectCode, design: TrapDesign, ...informs: readonly string[]): DemoTrap => ({
  station,
  insect,
  design,
  informs,
});

/** The 60 traps of 2026. In 2024 and 2025 those of the farms that had joined hung at the same stations. */
export const TRAPS: readonly DemoTrap[] = [
  hang('QU1', 'HZ', 'mesh-cone', 'quernstead-kiln', 'quernstead-rows'),
  hang('QU2', 'HZ', 'mesh-cone', 'quernstead-kiln', 'quernstead-rows'),
  hang('QU1', 'ON', 'mesh-cone', 'quernstead-kiln', 'quernstead-rows'),
  hang('QU2', 'ON', 'mesh-cone', 'quernstead-kiln', 'quernstead-rows'),
  hang('QU1', 'SF', 'bucket', 'quernstead-kiln', 'quernstead-rows'),
  hang('QU2', 'SF', 'bucket', 'quernstead-kiln', 'quernstead-rows'),
  hang('QU3', 'MC', 'wire-cone', 'quernstead-gourd'),
  hang('QU4', 'MC', 'wire-cone', 'quernstead-gourd'),

  hang('LA1', 'HZ', 'mesh-cone', 'larkwater-heron'),
  hang('LA1', 'ON', 'mesh-cone', 'larkwater-heron', 'larkwater-bank'),
  hang('LA1', 'SF', 'bucket', 'larkwater-heron'),
  hang('LA2', 'HZ', 'wire-cone', 'larkwater-weir'),

  hang('OS1', 'MC', 'bucket', 'osierholm-withy', 'osierholm-end'),
  hang('OS2', 'MC', 'bucket', 'osierholm-withy'),
  hang('OS3', 'MC', 'bucket', 'osierholm-end'),
  hang('OS4', 'HZ', 'mesh-cone', 'osierholm-causeway'),
  hang('OS4', 'ON', 'mesh-cone', 'osierholm-causeway'),
  hang('OS4', 'SF', 'bucket', 'osierholm-causeway'),

  hang('DU1', 'HZ', 'mesh-cone', 'dunnoch-sparrow'),
  hang('DU2', 'HZ', 'wire-cone', 'dunnoch-sparrow'),
  hang('DU1', 'ON', 'mesh-cone', 'dunnoch-sparrow'),
  hang('DU1', 'SF', 'bucket', 'dunnoch-sparrow'),
  hang('DU3', 'ON', 'mesh-cone', 'dunnoch-clay'),

  hang('MA1', 'HZ', 'wire-cone', 'marlterrace-top', 'marlterrace-middle'),
  hang('MA2', 'HZ', 'wire-cone', 'marlterrace-middle'),
  hang('MA3', 'ON', 'mesh-cone', 'marlterrace-foot'),

  hang('FE1', 'HZ', 'mesh-cone', 'fennelgate-lantern', 'fennelgate-foot'),
  hang('FE1', 'ON', 'mesh-cone', 'fennelgate-lantern', 'fennelgate-foot'),
  hang('FE2', 'SF', 'bucket', 'fennelgate-lantern', 'fennelgate-foot'),
  hang('FE2', 'HZ', 'mesh-cone', 'fennelgate-lantern', 'fennelgate-foot'),
  hang('FE3', 'MC', 'bucket', 'fennelgate-bee'),
  hang('FE4', 'MC', 'bucket', 'fennelgate-bee'),

  hang('CR1', 'HZ', 'mesh-cone', 'cresslow-pond'),
  hang('CR1', 'ON', 'mesh-cone', 'cresslow-pond'),
  hang('CR1', 'SF', 'bucket', 'cresslow-pond'),
  hang('CR2', 'MC', 'wire-cone', 'cresslow-spring'),
  hang('CR3', 'MC', 'wire-cone', 'cresslow-spring'),

  hang('TO1', 'HZ', 'mesh-cone', 'tollyacre-strip'),
  hang('TO1', 'ON', 'mesh-cone', 'tollyacre-strip'),
  hang('TO1', 'SF', 'bucket', 'tollyacre-strip'),
  hang('TO2', 'HZ', 'wire-cone', 'tollyacre-garden'),

  hang('WE1', 'HZ', 'wire-cone', 'wetherbank-ram', 'wetherbank-fold'),
  hang('WE2', 'HZ', 'wire-cone', 'wetherbank-ram', 'wetherbank-fold'),
  hang('WE1', 'ON', 'mesh-cone', 'wetherbank-ram', 'wetherbank-fold'),
  hang('WE1', 'SF', 'bucket', 'wetherbank-ram', 'wetherbank-fold'),

  hang('IV1', 'MC', 'bucket', 'ivelow-patch'),
  hang('IV2', 'MC', 'bucket', 'ivelow-patch'),
  hang('IV3', 'HZ', 'mesh-cone', 'ivelow-lane'),
  hang('IV3', 'ON', 'mesh-cone', 'ivelow-lane', 'ivelow-island'),
  hang('IV3', 'SF', 'bucket', 'ivelow-lane'),
  hang('IV4', 'ON', 'mesh-cone', 'ivelow-island'),

  hang('PI1', 'HZ', 'mesh-cone', 'pightle-little'),
  hang('PI1', 'ON', 'mesh-cone', 'pightle-little'),
  hang('PI1', 'SF', 'bucket', 'pightle-little'),
  hang('PI2', 'MC', 'wire-cone', 'pightle-great'),
  hang('PI3', 'MC', 'wire-cone', 'pightle-great'),

  hang('YA1', 'HZ', 'mesh-cone', 'yarrowfold-top'),
  hang('YA1', 'ON', 'mesh-cone', 'yarrowfold-top', 'yarrowfold-yard'),
  hang('YA1', 'SF', 'bucket', 'yarrowfold-top'),
  hang('YA2', 'ON', 'mesh-cone', 'yarrowfold-yard'),
];

/** A trap's id: station, insect and the season's year, since a trap record is one season's hanging. */
export const trapIdOf = (trap: Pick<DemoTrap, 'station' | 'insect'>, year: number): string =>
  `${trap.station}-${trap.insect}-${String(year).slice(2)}`;
