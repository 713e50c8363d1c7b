/** `npm run skill -- rate`: how far to trust a nightly rate, a doubt about a trap, and a question about exchanged traps. */
import { fromCore } from '../bundle.mjs';
import { coverageTables } from './coverage.mjs';

export async function skill({ seeds }) {
  const core = await fromCore(['catch/coverage.testing', 'advice/visit-dispersion']);
  return `## Does the 80 % interval hold the true rate?\n\n${coverageTables(core, seeds)}`;
}
