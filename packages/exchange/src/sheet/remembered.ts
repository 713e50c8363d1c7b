/** Answers that were given for earlier files, for the same questions of the next: words, names, and what holds for all. */
import type { SheetQuestion } from '@duskwatch/core';
import type { AnyMatch } from './answers.ts';

/** The newest answer to the question among the matches, newest first; null where none answers it. A day is asked anew. */
export function rememberedAnswer({ ask, about }: SheetQuestion, matches: readonly AnyMatch[]): string | null {
  for (const match of matches) {
    const answer = answerIn(match, ask, about);
    if (answer !== null && answer !== undefined) return String(answer);
  }
  return null;
}

function answerIn(match: AnyMatch, ask: SheetQuestion['ask'], about: string | null): string | number | null | undefined {
  if (match.kind === 'weather') {
    if (ask === 'source') return match.sourceId;
    return ask === 'temperatureUnit' || ask === 'precipitationUnit' || ask === 'dateOrder' ? match[ask] : null;
  }
  if (ask === 'word') return match.words[about ?? ''];
  if (ask === 'insectName') return match.insects[about ?? ''];
  if (ask === 'designName') return match.designs[about ?? ''];
  if (ask === 'dateOrder' || ask === 'figures') return match[ask];
  return ask in match.constants ? match.constants[ask as keyof typeof match.constants] : null;
}
