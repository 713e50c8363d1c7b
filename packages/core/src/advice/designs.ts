/** Rates of another trap design beside the one that leads: shown, adjusted only with the published range, never pooled. */
import { catalogue } from '../catalogue/index.ts';
import type { DesignFinding } from './catch-finding.ts';
import type { Evidence } from './types.ts';

export function otherDesign(other: DesignFinding, lead: DesignFinding | null): Evidence[] {
  const ratio = lead
    ? catalogue.designRatios.find(
        ({ of, against }) => (of === lead.design && against === other.design) || (of === other.design && against === lead.design),
      )
    : undefined;
  const perNight = other.rate.perNight;
  // `ratio` says what share `of` catches of `against`; dividing goes the other way.
  const adjusted: readonly [number, number] | null = !ratio
    ? null
    : ratio.of === lead!.design
      ? [perNight * ratio.low, perNight * ratio.high]
      : [perNight / ratio.high, perNight / ratio.low];
  return [
    {
      kind: 'other-design',
      design: other.design,
      perNight,
      ratio: ratio ? [ratio.low, ratio.high] : null,
      against: lead?.design ?? null,
      adjusted,
      source: ratio?.source ?? null,
    },
    ...other.because,
  ];
}
