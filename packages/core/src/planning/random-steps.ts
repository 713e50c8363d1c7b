/** Numbers from 0 to below 1, always the same ones, so that a round keeps its order (constants of Knuth's TAOCP vol. 2). */
export function randomSteps(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
