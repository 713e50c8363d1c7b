import { addDays, day, type FieldInsectView, formatDay, type RatePoint, type TrapDesign } from '@duskwatch/core';

/** Whether all that speaks for a stretch of nights reads low: the trap was doubtful, or its lure past its life. */
export function isWeak({ from, to }: RatePoint, { checks, traps }: FieldInsectView, design: TrapDesign): boolean {
  const own = new Set(traps.filter((trap) => trap.design === design).map(({ trapId }) => trapId));
  const speaking = checks.filter(
    ({ trapId, on, nights, condition }) =>
      own.has(trapId) && condition !== 'unfit' && on >= to && formatDay(addDays(day(on), -nights)) <= from,
  );
  return (
    speaking.length > 0 && speaking.every(({ condition, lurePastLife }) => condition === 'doubtful' || lurePastLife === true)
  );
}
