/**
 * The highest rate, in moths per trap per night, that a catch of nothing still allows: at any higher one a catch of
 * zero would have had a probability below 1 − `confidence`. "Nothing caught" is not "nothing there".
 *
 * Poisson (`k` null): P(0) = e^(−λn), so λ = −ln(1 − confidence)/n, the same however the nights were grouped.
 * Negative binomial with dispersion `k` per visit and the nights shared equally by `visits`:
 * P(0) = (1 + λn/(k·visits))^(−k·visits). By default one visit for all nights, which gives the widest limit.
 * Both are exact; the derivation is the formula itself.
 *
 * @example upperLimitForZero({ nights: 3, k: null, confidence: 0.95 }) // 0.9986: the "rule of three"
 */
export function upperLimitForZero(catchOfNothing: {
  readonly nights: number;
  readonly visits?: number;
  readonly k: number | null;
  readonly confidence: number;
}): number {
  const { nights, visits = 1, k, confidence } = catchOfNothing;
  const logOdds = -Math.log1p(-confidence);
  if (k === null) return logOdds / nights;
  const size = k * visits;
  return (size * Math.expm1(logOdds / size)) / nights;
}
