/** How often a sound trap is doubted, and how soon one that is not. */
import { markdownTable } from '../markdown.mjs';

const NETWORKS = [
  { traps: 12, moths: 1200 },
  { traps: 12, moths: 100 },
  { traps: 4, moths: 1200 },
  { traps: 4, moths: 100 },
];
const K = 3;
const tenths = (share) => `${(100 * share).toFixed(1)} %`;

export function soundnessTables(core, seeds) {
  const sound = NETWORKS.flatMap((network) =>
    [0.5, 0.9, 2].map((placeK) => {
      // As many trap-seasons in small networks as in large ones.
      const { trapSeasons, silent, strong, loud } = core.soundSeasons(
        { ...network, placeK, k: K },
        Math.ceil((seeds * 2) / network.traps),
      );
      return {
        traps: network.traps,
        'moths a trap and season': network.moths,
        'k between places': placeK,
        'trap-seasons': trapSeasons,
        'doubted as silent': tenths(silent),
        'so that the field turns Blind': tenths(strong),
        'doubted as loud': tenths(loud),
      };
    }),
  );
  const faults = [
    ['dead from the first night', { from: 0, share: 0 }, null],
    ['dead, its lure changed every 28 days', { from: 0, share: 0 }, 28],
    ['dead from the height of the second flight', { from: 85, share: 0 }, null],
    ['catching five times its place', { from: 0, share: 5 }, null],
    ['catching ten times its place', { from: 0, share: 10 }, null],
  ];
  const found = NETWORKS.flatMap((network) =>
    faults.map(([name, fault, lureDays]) => {
      const { moderate, strong } = core.faultFound({ ...network, placeK: 0.9, k: K, lureDays }, fault, Math.ceil(seeds / 5));
      const whole = (value) => (value === null ? '–' : Math.round(value));
      return {
        traps: network.traps,
        'moths a trap and season': network.moths,
        fault: name,
        doubted: tenths(moderate.found),
        'nights to it': whole(moderate.nights),
        'moths passed by': whole(moderate.moths),
        Blind: tenths(strong.found),
        'nights to that': whole(strong.nights),
        'moths passed by then': whole(strong.moths),
      };
    }),
  );
  return `### Sound traps\n\n${markdownTable(sound)}\n\n### Traps that are not\n\n${markdownTable(found)}`;
}
