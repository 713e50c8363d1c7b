export { digamma, logGamma, trigamma } from './gamma-function.ts';
export * from './incomplete-beta.ts';
export * from './logistic-regression.ts';
export { type CountSample, fitNegativeBinomial, type NegativeBinomialFit } from './negative-binomial.ts';
export { type NegativeBinomialRegression, negativeBinomialRegression } from './negative-binomial-regression.ts';
export type { Coefficient, RegressionFit, RegressionInput } from './regression.ts';
