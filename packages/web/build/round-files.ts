/** Which files of a build the round loads: the start of the app and the round's own, with all that these import. */
import type { Rolldown } from 'vite';

const ROUND_MODULE = 'src/phone/round/RoundPage.tsx';
const SHELL_MODULE = 'src/app/Shell.tsx';
const HELP_MODULE = 'src/desk/help/HelpPage.tsx';
const SCOUT_MODULE = 'src/phone/scouting/ScoutPage.tsx';

export const roundChunks = (bundle: Rolldown.OutputBundle): Rolldown.OutputChunk[] => chunksOf(bundle, ROUND_MODULE);

/** All that a device keeps, so that the round, scouting and the help open without signal. */
export const phoneChunks = (bundle: Rolldown.OutputBundle): Rolldown.OutputChunk[] => [
  ...new Set([
    ...chunksOf(bundle, ROUND_MODULE),
    ...chunksOf(bundle, SCOUT_MODULE),
    ...chunksOf(bundle, SHELL_MODULE),
    ...chunksOf(bundle, HELP_MODULE),
  ]),
];

function chunksOf(bundle: Rolldown.OutputBundle, module: string): Rolldown.OutputChunk[] {
  const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
  const start = chunks.filter((chunk) => chunk.isEntry && chunk.name === 'index');
  const page = chunks.filter((chunk) => chunk.moduleIds.some((id) => id.endsWith(module)));
  if (start.length !== 1 || page.length !== 1) throw new Error(`the build holds no single start and ${module}`);
  const byName = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
  const found = new Set([...start, ...page]);
  for (const chunk of found) for (const name of chunk.imports) if (byName.has(name)) found.add(byName.get(name)!);
  return [...found];
}
