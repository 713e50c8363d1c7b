export { digamma, logGamma, trigamma } from './gamma-function.ts';
export * from './incomplete-beta.ts';
export * from './incomplete-gamma.ts';
export * from './indicator-columns.ts';
export * from './logistic-regression.ts';
export {
  type NegativeBinomialInput,
  type NegativeBinomialRegression,
  negativeBinomialRegression,
} from './negative-binomial-regression.ts';
export type { Coefficient, RegressionFit, RegressionInput } from './regression.ts';
export * from './student.ts';
