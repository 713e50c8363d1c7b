import type { PlanLine } from './plan-types.ts';
import { type TrapWishes, trapNumberRow } from './trap-table.ts';

/**
 * Takes traps away, one at a time, until there are no more than the budget: each time where the greater of the two risks
 * of a wrong verb grows least, and on a tie where most traps are left. Lines keep at least one trap, and a number that
 * the user stated.
 */
export function fitBudget(lines: readonly PlanLine[], budget: number | null, wishes: TrapWishes = {}): PlanLine[] {
  const fitted = [...lines];
  if (budget === null) return fitted;
  let total = lines.reduce((sum, { traps }) => sum + traps.count, 0);
  while (total > budget) {
    let cut: { index: number; line: PlanLine; growth: number } | null = null;
    for (const [index, line] of fitted.entries()) {
      if (line.traps.count < 2 || line.traps.why === 'stated') continue;
      const fewer = withTraps(line, line.traps.count - 1, wishes);
      const growth = risk(fewer) - risk(line);
      const better =
        cut === null || growth < cut.growth || (growth === cut.growth && line.traps.count > fitted[cut.index]!.traps.count);
      if (better) cut = { index, line: fewer, growth };
    }
    if (cut === null) break;
    fitted[cut.index] = cut.line;
    total--;
  }
  return fitted;
}

function withTraps(line: PlanLine, count: number, wishes: TrapWishes): PlanLine {
  const { rule, traps, nightsBetweenChecks } = line;
  const quality =
    rule === null ? null : trapNumberRow({ ...rule, k: traps.dispersion?.k ?? null, nightsBetweenChecks }, count, wishes);
  return { ...line, traps: { ...traps, count, why: 'budget', quality } };
}

/** Without a rule there is no verb to be wrong: such a line gives up its second trap before others lose sight. */
const risk = ({ traps: { quality } }: PlanLine): number => (quality === null ? 0 : Math.max(quality.missed, quality.falseAlarm));
