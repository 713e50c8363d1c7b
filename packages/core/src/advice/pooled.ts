/** What the traps of one design say together, worked out once for all the fields they inform. */

import { lazily } from '../base/lazily.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import { poolNewest } from '../catch/index.ts';
import type { TrapRecord } from '../records/schema.ts';
import { questions, trendEvidence, unusableEvidence } from './catch-evidence.ts';
import { historyOf, once, type Prepared, scatterOf } from './prepare.ts';
import type { SharedPool } from './shared.ts';
import { doubtAbout, doubtEvidence, isSurelyUnsound } from './soundness.ts';
import { visitDispersion } from './visit-dispersion.ts';

/** `traps` are of one insect and one design, at least one; `windowNights` is how many nights the newest visits should cover. */
export function pooled(prepared: Prepared, traps: readonly TrapRecord[], windowNights: number): SharedPool {
  const key = `pool ${windowNights}\n${traps.map((trap) => trap.trapId).join('\n')}`;
  return once(prepared, scatterOf(traps[0]!), key, () => poolOf(prepared, traps, windowNights));
}

function poolOf(prepared: Prepared, traps: readonly TrapRecord[], windowNights: number): SharedPool {
  // A trap that is surely not sound says nothing of the field.
  const histories = traps
    .filter((trap) => !isSurelyUnsound(prepared, trap))
    .map((trap) => ({ trap, history: historyOf(prepared, trap) }));
  const dispersion = visitDispersion(prepared, traps[0]!.insect, traps[0]!.design);
  const { designs, unusable } = poolNewest(histories, {
    on: prepared.on,
    windowNights,
    maxAgeDays: ASSUMPTIONS.maxCheckGapDays.value,
    k: dispersion,
    level: ASSUMPTIONS.intervalLevel.value,
  });
  const newest = designs[0] ?? null;
  const seen = histories.map(({ history }) => history);
  const doubts = lazily(() =>
    traps.flatMap((trap) => {
      const doubt = doubtAbout(prepared, trap);
      return doubt ? [{ strong: doubt.degree === 'strong', evidence: doubtEvidence(trap, doubt) }] : [];
    }),
  );
  const evidenceOf = (strong: boolean) =>
    doubts()
      .filter((doubt) => doubt.strong === strong)
      .map(({ evidence }) => evidence);
  const blind = lazily(() => [...evidenceOf(true), ...unusable.map(unusableEvidence)]);
  const doubted = lazily(() => evidenceOf(false));
  const context = lazily(() => (newest ? [...trendEvidence(newest.design, seen, prepared.on), ...questions(seen, newest)] : []));
  return {
    dispersion,
    newest,
    get unusable() {
      return blind();
    },
    get doubts() {
      return doubted();
    },
    get context() {
      return context();
    },
  };
}
