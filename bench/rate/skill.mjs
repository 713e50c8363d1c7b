/** `npm run skill -- rate`: how far to trust a nightly rate, a doubt about a trap, and a question about exchanged traps. */
import { fromCore } from '../bundle.mjs';
import { coverageTables } from './coverage.mjs';
import { soundnessTables } from './soundness.mjs';
import { swapTables } from './swaps.mjs';

export async function skill({ seeds }) {
  const core = await fromCore([
    'catch/coverage.testing',
    'advice/visit-dispersion',
    'catch/network.testing',
    'questions/questions',
    'questions/invented-season.testing',
  ]);
  return [
    '## Does the 80 % interval hold the true rate?',
    coverageTables(core, seeds),
    '## Is a trap sound?',
    soundnessTables(core, seeds),
    '## Were two traps exchanged?',
    swapTables(core, seeds),
  ].join('\n\n');
}
