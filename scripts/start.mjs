/** `npm start`: sets the checkout up, loads the invented demo into an empty database, and serves. */
import { onFittingNode, setUp } from './setup.mjs';

if (await onFittingNode()) {
  if (await setUp()) {
    const { main } = await import('../packages/cli/dist/duskwatch.mjs');
    await main(['serve', '--demo', ...process.argv.slice(2)]);
  } else {
    process.exitCode = 1;
  }
}
