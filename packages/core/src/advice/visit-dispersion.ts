/** How much one visit's count scatters about the run of its trap's flight, from all of a program's own visits. */

import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { type DispersionEstimate, dispersionBetweenVisits, priorDispersion } from '../catch/dispersion.ts';
import type { TrapHistory } from '../catch/types.ts';
import type { TrapDesign } from '../records/schema.ts';
import { historyOf, once, type Prepared, scatterOf } from './prepare.ts';
import type { VisitScatter } from './types.ts';

/** ln k is normal about this before a program has visits of its own. */
export const PRIOR_OF_K = { median: ASSUMPTIONS.visitDispersionK.value, logSd: ASSUMPTIONS.visitDispersionLogSd.value };

/** What is known of k before a program has visits of its own. */
export const VISIT_DISPERSION_PRIOR: DispersionEstimate = priorDispersion(PRIOR_OF_K);

/**
 * k of the traps of one insect and design, wherever they stand and whichever season they stood in.
 *
 * Estimated once for a prepared program.
 */
export function visitDispersion(prepared: Prepared, insect: string, design: TrapDesign): DispersionEstimate {
  // How counts scatter is a matter of the whole program: an earlier day is read with today's figure.
  const whole = prepared.present ?? prepared;
  return once(whole, scatterOf({ insect, design }), 'k', () => {
    const traps = [...whole.traps.values()].filter((trap) => trap.insect === insect && trap.design === design);
    return dispersionShownBy(traps.map((trap) => historyOf(whole, trap)));
  });
}

/** k by the visits of some traps. */
export function dispersionShownBy(histories: readonly TrapHistory[]): DispersionEstimate {
  const own = dispersionBetweenVisits(
    histories.map(({ intervals }) => intervals),
    PRIOR_OF_K,
  );
  return own.visits === 0 ? VISIT_DISPERSION_PRIOR : own;
}

/** What a rate says of the k behind it. */
export function visitScatter({ visits, traps, low, high }: DispersionEstimate): VisitScatter {
  return { between: 'visits-of-one-trap', from: visits === 0 ? 'prior' : 'own-checks', low, high, visits, traps };
}
