/** Which files of a build the round loads: the start of the app and the round's own, with all that these import. */
import type { Rolldown } from 'vite';

export const ROUND_MODULE = 'src/round/RoundPage.tsx';

export function roundChunks(bundle: Rolldown.OutputBundle): Rolldown.OutputChunk[] {
  const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
  const start = chunks.filter((chunk) => chunk.isEntry && chunk.name === 'index');
  const round = chunks.filter((chunk) => chunk.moduleIds.some((id) => id.endsWith(ROUND_MODULE)));
  if (start.length !== 1 || round.length !== 1) throw new Error(`the build holds no single start and ${ROUND_MODULE}`);
  const byName = new Map(chunks.map((chunk) => [chunk.fileName, chunk]));
  const found = new Set([...start, ...round]);
  for (const chunk of found) for (const name of chunk.imports) if (byName.has(name)) found.add(byName.get(name)!);
  return [...found];
}
